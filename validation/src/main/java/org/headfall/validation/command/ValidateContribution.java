package org.headfall.validation.command;

import org.headfall.cli.CommandContribution;

/** Adds {@code validate} to the program. */
public final class ValidateContribution implements CommandContribution {

    @Override
    public Object command() {
        return new ValidateCommand();
    }
}

package org.headfall.cli;

import picocli.CommandLine.Option;

/** Whether the answer is wanted as JSON. */
public final class JsonOption {

    /** The option as typed. */
    static final String NAME = "--json";

    @Option(names = NAME, description = "Answer with one JSON object on standard output.")
    private boolean json;

    /** Whether it was given. */
    public boolean wanted() {
        return json;
    }
}

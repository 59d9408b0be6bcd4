package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.sweep.work.ThreadEngine;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

class CommandsTest {

    @Test
    void aCommandIsCalledByTheNameInItsAnnotation() {
        for (OwnCommand command : OwnCommand.values()) {
            Command annotation = annotationOf(command.made(Terminal.NONE, new ThreadEngine()));
            assertEquals(command.word(), annotation.name());
            assertEquals(command, OwnCommand.called(command.word()).orElseThrow());
        }
        assertTrue(OwnCommand.called("validate").isEmpty());
        List<String> words =
                Arrays.stream(OwnCommand.values()).map(OwnCommand::word).toList();
        assertEquals(words.stream().sorted().toList(), words);
    }

    @Test
    void noCommandIsLookedThroughForMethods() {
        for (CommandLine command : all(Headfall.allCommands())) {
            if (command.getCommandSpec().userObject().getClass().getName().startsWith("org.headfall.")) {
                assertFalse(
                        annotationOf(command.getCommandSpec().userObject()).addMethodSubcommands(),
                        command::getCommandName);
            }
        }
    }

    /** What {@code main} has picocli leave out must be the type of no option: it could not be read. */
    @Test
    void noOptionIsOfATypeThatIsLeftOut() {
        int seen = 0;
        for (CommandLine command : all(Headfall.allCommands())) {
            CommandSpec spec = command.getCommandSpec();
            List<ArgSpec> arguments = new ArrayList<>(spec.options());
            arguments.addAll(spec.positionalParameters());
            for (ArgSpec argument : arguments) {
                assertFalse(argument.type().getName().matches(Headfall.TYPES_OF_NO_OPTION), argument::toString);
                for (Class<?> part : argument.auxiliaryTypes()) {
                    assertFalse(part.getName().matches(Headfall.TYPES_OF_NO_OPTION), argument::toString);
                    seen++;
                }
            }
        }
        assertTrue(seen > 50, seen + " types");
    }

    private static Command annotationOf(Object command) {
        return command.getClass().getAnnotation(Command.class);
    }

    private static List<CommandLine> all(CommandLine command) {
        List<CommandLine> all = new ArrayList<>(List.of(command));
        command.getSubcommands().values().forEach(one -> all.addAll(all(one)));
        return all;
    }
}

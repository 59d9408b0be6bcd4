package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.headfall.scenarios.sweep.work.ThreadEngine;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

class CommandsTest {

    private final String before = System.getProperty(Headfall.TYPES_NOT_READ);

    @AfterEach
    void restore() {
        if (before == null) {
            System.clearProperty(Headfall.TYPES_NOT_READ);
        } else {
            System.setProperty(Headfall.TYPES_NOT_READ, before);
        }
    }

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

    /** With the types of picocli left out that {@code main} leaves out, an option of each type in use still gets its value. */
    @Test
    void optionsOfEveryTypeInUseAreReadWithTheTypesLeftOut() {
        System.setProperty(Headfall.TYPES_NOT_READ, Headfall.TYPES_OF_NO_OPTION);
        Set<Class<?>> read = new HashSet<>();
        for (CommandLine command : all(Headfall.allCommands())) {
            List<String> line = new ArrayList<>();
            CommandSpec spec = command.getCommandSpec();
            arguments(spec).filter(one -> !one.isOption() || !isHelp(one)).forEach(one -> {
                if (one.isOption()) {
                    line.add(((CommandLine.Model.OptionSpec) one).longestName());
                }
                if (one.arity().max() > 0) {
                    line.add(sample(one));
                }
                read.add(one.type());
            });
            if (spec.parent() != null) {
                List<String> words =
                        new ArrayList<>(List.of(spec.qualifiedName(" ").split(" ", -1)));
                words.remove(0);
                words.addAll(line);
                Headfall.allCommands().parseArgs(words.toArray(String[]::new));
            }
        }
        assertTrue(read.contains(Path.class) && read.contains(int.class), read::toString);
    }

    private static boolean isHelp(ArgSpec one) {
        CommandLine.Model.OptionSpec option = (CommandLine.Model.OptionSpec) one;
        return option.usageHelp() || option.versionHelp();
    }

    private static Stream<ArgSpec> arguments(CommandSpec spec) {
        return Stream.concat(spec.options().stream(), spec.positionalParameters().stream());
    }

    private static String sample(ArgSpec one) {
        Class<?> type = one.type().isArray() || List.class.isAssignableFrom(one.type())
                ? one.typeInfo().getAuxiliaryTypes()[0]
                : one.type();
        if (type.isEnum()) {
            return type.getEnumConstants()[0].toString();
        }
        return Number.class.isAssignableFrom(type) || type.isPrimitive() ? "1" : "sample";
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

package org.headfall.validation.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.cli.Headfall;
import org.headfall.validation.benchmark.Benchmark;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** The help of every command as it is printed; here, because this module sees the commands of all others. */
class HelpTest {

    private static final int WIDTH = 80;

    /** Both programs, each with a command that it has. */
    static Stream<Arguments> programs() {
        return Stream.of(
                Arguments.of("headfall sweep rerun", Headfall.allCommands()),
                Arguments.of("headfall validate", Headfall.allCommands()),
                Arguments.of("bench solve", new CommandLine(Benchmark.class)));
    }

    private static List<CommandLine> withAllBelow(CommandLine program) {
        List<CommandLine> all = new ArrayList<>(List.of(program));
        for (int i = 0; i < all.size(); i++) {
            all.addAll(all.get(i).getSubcommands().values());
        }
        return all;
    }

    /** picocli warns on the error output of a text that it cannot format, and prints it all the same. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("programs")
    void fitsALineOfEightyCharactersAndIsFormattedWithoutAWarning(String command, CommandLine program) {
        PrintStream before = System.err;
        ByteArrayOutputStream warnings = new ByteArrayOutputStream();
        List<String> wide = new ArrayList<>();
        List<String> names = new ArrayList<>();
        System.setErr(new PrintStream(warnings, true, StandardCharsets.UTF_8));
        try {
            for (CommandLine one : withAllBelow(program)) {
                names.add(one.getCommandSpec().qualifiedName());
                one.getUsageMessage()
                        .lines()
                        .filter(line -> line.length() > WIDTH)
                        .forEach(wide::add);
            }
        } finally {
            System.setErr(before);
        }
        assertTrue(names.contains(command), names::toString);
        assertEquals("", warnings.toString(StandardCharsets.UTF_8));
        assertEquals(List.of(), wide);
    }
}

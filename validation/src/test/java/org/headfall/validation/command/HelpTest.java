package org.headfall.validation.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.headfall.validation.benchmark.Benchmark;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** The help of the benchmarks and of {@code validate}, as it is printed. */
class HelpTest {

    private static final int WIDTH = 80;

    /** picocli warns on the error output of a text that it cannot format, and prints it all the same. */
    @Test
    void fitsALineOfEightyCharactersAndIsFormattedWithoutAWarning() {
        List<CommandLine> all = new ArrayList<>();
        PrintStream before = System.err;
        ByteArrayOutputStream warnings = new ByteArrayOutputStream();
        List<String> wide = new ArrayList<>();
        System.setErr(new PrintStream(warnings, true, StandardCharsets.UTF_8));
        try {
            all.add(new CommandLine(Benchmark.class));
            all.add(new CommandLine(ValidateCommand.class));
            all.addAll(all.get(0).getSubcommands().values());
            for (CommandLine command : all) {
                command.getUsageMessage()
                        .lines()
                        .filter(line -> line.length() > WIDTH)
                        .forEach(wide::add);
            }
        } finally {
            System.setErr(before);
        }
        assertTrue(all.size() > 2, "benchmarks have commands below them");
        assertEquals("", warnings.toString(StandardCharsets.UTF_8));
        assertEquals(List.of(), wide);
    }
}

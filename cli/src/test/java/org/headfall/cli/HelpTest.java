package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.sweep.work.ThreadEngine;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** The help of every command, as it is printed. */
class HelpTest {

    private static final int WIDTH = 80;

    /** Every command and the commands below it. */
    private static List<CommandLine> all() {
        List<CommandLine> all = new ArrayList<>();
        all.add(Headfall.commandLine(
                Terminal.NONE, new ThreadEngine(), new Failures(Terminal.NONE, List.of()), new String[0]));
        for (int i = 0; i < all.size(); i++) {
            all.addAll(all.get(i).getSubcommands().values());
        }
        return all;
    }

    /** picocli warns on the error output of a text that it cannot format, and prints it all the same. */
    @Test
    void fitsALineOfEightyCharactersAndIsFormattedWithoutAWarning() {
        PrintStream before = System.err;
        ByteArrayOutputStream warnings = new ByteArrayOutputStream();
        List<String> wide = new ArrayList<>();
        List<String> commands = new ArrayList<>();
        System.setErr(new PrintStream(warnings, true, StandardCharsets.UTF_8));
        try {
            for (CommandLine command : all()) {
                commands.add(command.getCommandSpec().qualifiedName());
                command.getUsageMessage()
                        .lines()
                        .filter(line -> line.length() > WIDTH)
                        .forEach(wide::add);
            }
        } finally {
            System.setErr(before);
        }
        assertTrue(commands.contains("headfall sweep rerun"), commands::toString);
        assertEquals("", warnings.toString(StandardCharsets.UTF_8));
        assertEquals(List.of(), wide);
    }
}

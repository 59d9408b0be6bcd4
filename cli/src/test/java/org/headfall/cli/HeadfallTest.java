package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.solver.flow.UnmetRuleException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadfallTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder;

    private int headfall(String... arguments) {
        return Headfall.execute(Terminal.NONE, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    @Test
    void copiesAnExampleThatPassesTheCheck() {
        Path copy = folder.resolve("my-field");
        assertEquals(0, headfall("example", copy.toString()), err::toString);
        assertEquals(0, headfall("check", copy.toString()), err::toString);
        assertTrue(out.toString().contains("bores: 21, springs: 3"), out::toString);
        assertTrue(out.toString().contains("sealing bed: adjusts to a change of head in "), out::toString);
        assertEquals("", err.toString());
    }

    @Test
    void leavesAFolderWithFilesAlone() throws IOException {
        Files.writeString(folder.resolve("mine.txt"), "mine");
        assertEquals(1, headfall("example", folder.toString()));
        assertEquals(List.of("mine.txt"), List.of(folder.toFile().list()));
        assertTrue(err.toString().contains("exists already"), err::toString);
    }

    @Test
    void reportsEveryProblemOfAScenarioWithItsPlace() throws IOException {
        Path document = folder.resolve("bad.yaml");
        Files.writeString(document, "title: x\ndatun: y\ncrs: EPSG:32743\n");
        assertEquals(1, headfall("check", document.toString()));
        assertTrue(err.toString().contains("bad.yaml:2:1: datun"), err::toString);
        assertTrue(err.toString().contains("did you mean datum?"), err::toString);
        assertTrue(err.toString().contains("problems; nothing was run."), err::toString);
        assertEquals("", out.toString());
    }

    @Test
    void answersAWrongCommandWithTheNearestOne() {
        assertEquals(2, headfall("exampel"));
        assertTrue(err.toString().contains("headfall example"), err::toString);
        assertEquals(2, headfall("check"));
        assertEquals(2, headfall());
        assertTrue(err.toString().contains("no command given; there are "), err::toString);
    }

    @Test
    void showsAnExampleInTheHelpOfEveryCommand() {
        for (String command : List.of("check", "example", "run")) {
            assertEquals(0, headfall(command, "--help"));
            assertTrue(out.toString().contains("headfall " + command + " my-field"), out::toString);
        }
        assertFalse(out.toString().contains("\u001b"), "no colour where there is no terminal");
    }

    @Test
    void saysThatMemoryRanOutAlsoIfAnotherThreadRanOutOfIt() {
        Throwable inAnotherThread = new IllegalStateException(new OutOfMemoryError("Java heap space"));
        assertEquals(
                70, new Failures(Terminal.NONE, List.of("run", "x")).report(inAnotherThread, new PrintWriter(err)));
        assertTrue(err.toString().startsWith("headfall: not enough memory."), err::toString);
    }

    @Test
    void reportsItsOwnFaultWithoutAStackTrace() throws IOException {
        int code = new Failures(Terminal.NONE, List.of("run", "x"))
                .report(new IllegalStateException("broken"), new PrintWriter(err));
        assertEquals(70, code);
        assertFalse(err.toString().contains("\tat "), err::toString);
        String path = err.toString().replaceAll("(?s).*Details are in (.*?\\.txt).*", "$1");
        String report = Files.readString(Path.of(path));
        Files.delete(Path.of(path));
        assertTrue(report.contains("command line: run x") && report.contains("HeadfallTest.reportsItsOwnFault"));
    }

    @Test
    void aRuleThatCannotBeMetIsAFaultOfTheInput() {
        UnmetRuleException unmet = new UnmetRuleException("Mulga 3", 500, 0.2, 1e-4);
        assertEquals(1, new Failures(Terminal.NONE, List.of("run", "x")).report(unmet, new PrintWriter(err)));
        assertTrue(err.toString().contains("'Mulga 3' cannot be met: at 500.0 m3/d"), err::toString);
    }
}

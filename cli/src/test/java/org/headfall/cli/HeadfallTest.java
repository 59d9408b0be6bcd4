package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
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
import org.headfall.solver.linear.SolveFailedException;
import org.headfall.solver.linear.SolveReport;
import org.headfall.solver.linear.SolveStatus;
import org.headfall.solver.time.StepSizeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadfallTest {

    @TempDir
    private Path folder;

    @Test
    void copiesAnExampleThatPassesTheCheck() {
        Path copy = folder.resolve("my-field");
        headfall("example", copy.toString()).exits(0);
        Answer answer = headfall("check", copy.toString()).exits(0);
        assertTrue(answer.out().contains("bores: 21, springs: 3"), answer.out());
        assertTrue(answer.out().contains("sealing bed: adjusts to a change of head in "), answer.out());
        assertEquals("", answer.err());
    }

    @Test
    void leavesAFolderWithFilesAlone() throws IOException {
        Files.writeString(folder.resolve("mine.txt"), "mine");
        Answer answer = headfall("example", folder.toString()).exits(1);
        assertEquals(List.of("mine.txt"), List.of(folder.toFile().list()));
        assertTrue(answer.err().contains("exists already"), answer.err());
    }

    @Test
    void reportsEveryProblemOfAScenarioWithItsPlace() throws IOException {
        Path document = folder.resolve("bad.yaml");
        Files.writeString(document, "title: x\ndatun: y\ncrs: EPSG:32743\n");
        Answer answer = headfall("check", document.toString()).exits(1);
        assertTrue(answer.err().contains("bad.yaml:2:1: datun"), answer.err());
        assertTrue(answer.err().contains("did you mean datum?"), answer.err());
        assertTrue(answer.err().contains("problems; nothing was run."), answer.err());
        assertEquals("", answer.out());
    }

    @Test
    void answersAWrongCommandWithTheNearestOne() {
        Answer answer = headfall("exampel").exits(2);
        assertTrue(answer.err().contains("headfall example"), answer.err());
        headfall("check").exits(2);
        answer = headfall().exits(2);
        assertTrue(answer.err().contains("no command given; there are "), answer.err());
    }

    @Test
    void showsAnExampleInTheHelpOfEveryCommand() {
        for (String command : List.of("check", "example", "run")) {
            Answer answer = headfall(command, "--help").exits(0);
            assertTrue(answer.out().contains("headfall " + command + " my-field"), answer.out());
            assertFalse(answer.out().contains("\u001b"), "no colour where there is no terminal");
        }
    }

    /** What is written of a failure, after asserting the exit code. */
    private static String reported(Throwable failure, ExitCode expected) {
        StringWriter err = new StringWriter();
        int code = new Failures(Terminal.NONE, List.of("run", "x")).report(failure, new PrintWriter(err));
        assertEquals(expected.code(), code, err::toString);
        return err.toString();
    }

    @Test
    void saysThatMemoryRanOutAlsoIfAnotherThreadRanOutOfIt() {
        Throwable inAnotherThread = new IllegalStateException(new OutOfMemoryError("Java heap space"));
        String said = reported(inAnotherThread, ExitCode.FAULT);
        assertTrue(said.startsWith("headfall: not enough memory."), said);
    }

    @Test
    void anUnsolvableScenarioIsNoFaultOfTheProgramAndSaysWhatToDo() {
        String said = reported(
                new SolveFailedException(new SolveReport(SolveStatus.ITERATION_LIMIT, 500, 2.0, 0.25, 1e-8)),
                ExitCode.INPUT);
        assertTrue(said.contains("residual norm 0.25") && said.contains("1.0E-8"), said);
        assertTrue(said.replaceAll("\\s+", " ").contains("or allow a larger output.head_tolerance"), said);
        said = reported(new StepSizeException(3, 1e-10, 1e-9), ExitCode.INPUT).replaceAll("\\s+", " ");
        assertTrue(said.contains("allow a larger error or check the values that jump at that day"), said);
        assertFalse(said.contains("fault of the program"), said);
    }

    @Test
    void reportsItsOwnFaultWithoutAStackTrace() throws IOException {
        String said = reported(new IllegalStateException("broken"), ExitCode.FAULT);
        assertFalse(said.contains("\tat "), said);
        String path = said.replaceAll("(?s).*Details are in (.*?\\.txt).*", "$1");
        String report = Files.readString(Path.of(path));
        Files.delete(Path.of(path));
        assertTrue(report.contains("command line: run x") && report.contains("HeadfallTest.reportsItsOwnFault"));
    }

    @Test
    void aRuleThatCannotBeMetIsAFaultOfTheInput() {
        UnmetRuleException unmet = new UnmetRuleException("Mulga 3", 500, 0.2, 1e-4);
        String said = reported(unmet, ExitCode.INPUT);
        assertTrue(said.contains("'Mulga 3' cannot be met: at 500 m3/d"), said);
    }

    @Test
    void stepsThatWouldBeTooShortAreAFaultOfTheInput() {
        String said = reported(new StepSizeException(12.5, 2e-10, 1e-9), ExitCode.INPUT);
        assertTrue(said.contains("at day 12.5") && said.contains("2e-10 d"), said);
    }
}

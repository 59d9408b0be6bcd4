package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ResultsReaderTest {

    @TempDir
    Path folder;

    private FinishedRun written() throws IOException {
        RunDescription description = SmallField.description();
        NetcdfRulesTest.write(folder, description);
        FinishedRun run = FinishedField.run(description);
        new SummaryFile().write(folder, run);
        return run;
    }

    @Test
    void readsBackWhatWasWritten() throws IOException {
        FinishedRun run = written();
        FinishedRun read = new ResultsReader().read(folder);
        assertEquals(run.description().title(), read.description().title());
        assertEquals(run.description().stations(), read.description().stations());
        assertEquals(run.description().reportDates(), read.description().reportDates());
        assertEquals(run.description().provenance(), read.description().provenance());
        assertEquals(run.description().mapReference(), read.description().mapReference());
        assertEquals(run.description().grid(), read.description().grid());
        assertEquals(run.limits(), read.limits());
        assertEquals(run.figures(), read.figures());
        assertEquals(run.findings().artesianHead(), read.findings().artesianHead());
        assertEquals(run.findings().confinement(), read.findings().confinement());
        assertEquals(
                run.findings().interference().get(0).bores(),
                read.findings().interference().get(0).bores());
        assertArrayEquals(
                run.findings().interference().get(0).drawdown(),
                read.findings().interference().get(0).drawdown());
    }

    @Test
    void readsBackSeriesExactlyAndGridsInSinglePrecision() throws IOException {
        Recording recording = written().recording();
        Recording read = new ResultsReader().read(folder).recording();
        assertArrayEquals(recording.days(), read.days());
        for (int i = 0; i < recording.series().size(); i++) {
            assertArrayEquals(
                    recording.series().get(i).head(), read.series().get(i).head());
            assertArrayEquals(
                    recording.series().get(i).levelInBore(),
                    read.series().get(i).levelInBore());
            assertArrayEquals(
                    recording.series().get(i).discharge(), read.series().get(i).discharge());
        }
        assertEquals(recording.balances(), read.balances());
        assertEquals(recording.grids().size(), read.grids().size());
        for (int i = 0; i < read.grids().size(); i++) {
            assertEquals(recording.grids().get(i).day(), read.grids().get(i).day());
            assertArrayEquals(
                    recording.grids().get(i).head(), read.grids().get(i).head(), 1e-5);
        }
        assertArrayEquals(recording.notConfinedSince(), read.notConfinedSince());
    }

    @Test
    void refusesAFolderWithoutASummary() throws IOException {
        written();
        Files.delete(folder.resolve(SummaryFile.NAME));
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.NOT_FINISHED, e.kind());
        assertTrue(e.getMessage().contains(SummaryFile.NAME), e.getMessage());
    }

    @Test
    void namesADamagedSummary() throws IOException {
        written();
        Files.writeString(folder.resolve(SummaryFile.NAME), "{\"format\": 1, \"title\": ");
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
    }

    @Test
    void saysWhatToDoWithASummaryOfAnOlderFormat() throws IOException {
        written();
        Path summary = folder.resolve(SummaryFile.NAME);
        Files.writeString(summary, "{\"format\": 2, \"title\": \"old\", \"toolVersion\": \"Headfall 0.0.9\"}");
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
        assertEquals(summary.toString(), e.place());
        String message = String.valueOf(e.getMessage());
        assertTrue(message.contains("Headfall 0.0.9") && message.contains("inputs.zip"), message);
    }

    @Test
    void namesASummaryThatIsNoText() throws IOException {
        written();
        Path summary = folder.resolve(SummaryFile.NAME);
        Files.write(summary, new byte[] {'{', (byte) 0xff, (byte) 0xfe});
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(summary.toString(), e.place());
    }

    /** The record that is cut off lies at the end, where a reader of the first records would not miss it. */
    @ParameterizedTest
    @ValueSource(strings = {"heads.nc", "bores.nc"})
    void namesANetcdfFileThatWasCutShort(String name) throws IOException {
        written();
        Path file = folder.resolve(name);
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length - 8));
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
        assertEquals(file.toString(), e.place());
    }

    @Test
    void namesANetcdfFileThatIsEmpty() throws IOException {
        written();
        Path file = Files.write(folder.resolve(DischargesFile.NAME), new byte[0]);
        ResultsException e = assertThrows(ResultsException.class, () -> DischargesFile.read(folder));
        assertEquals(file.toString(), e.place());
    }

    @Test
    void namesTheFoldersOfCases() throws IOException {
        written();
        Path parent = Files.createDirectory(folder.resolve("parent"));
        Files.writeString(parent.resolve(CaseTable.NAME), "limit\r\n");
        Path inner = Files.createDirectory(parent.resolve("existing-as-used"));
        Files.copy(folder.resolve(SummaryFile.NAME), inner.resolve(SummaryFile.NAME));
        assertEquals(List.of(inner), CaseFolders.in(parent));
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(parent));
        assertTrue(String.valueOf(e.getMessage()).contains(inner.toString()), e.getMessage());
        ResultsException responses = assertThrows(ResultsException.class, () -> ResponsesReader.read(parent));
        assertTrue(String.valueOf(responses.getMessage()).contains(inner.toString()), responses.getMessage());
    }

    @Test
    void namesADamagedNetcdfFile() throws IOException {
        written();
        Files.write(folder.resolve("heads.nc"), new byte[] {'C', 'D', 'F', 2, 0, 0});
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
    }
}

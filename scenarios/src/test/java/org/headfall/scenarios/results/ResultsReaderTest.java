package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
    void namesADamagedNetcdfFile() throws IOException {
        written();
        Files.write(folder.resolve("heads.nc"), new byte[] {'C', 'D', 'F', 2, 0, 0});
        ResultsException e = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.DAMAGED, e.kind());
    }
}

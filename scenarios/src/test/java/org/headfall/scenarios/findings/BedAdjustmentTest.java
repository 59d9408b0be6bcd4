package org.headfall.scenarios.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.run.RunPlanner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Response times of sealing beds against b'² Ss'/K' by hand (Hantush 1960). */
class BedAdjustmentTest {

    @TempDir
    Path folder;

    private Optional<String> words(String bed) throws InputException, IOException {
        Path document = Files.writeString(folder.resolve("scenario.yaml"), """
                title: Bed
                datum: an invented datum
                crs: local
                period: {from: 2026-07-01, for: 2 yr}
                grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 1 km}
                aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -50 m, bottom: -150 m}
                ground: 130 m
                BED
                boundaries:
                  - {name: west, side: west, fixed_head: 120 m}
                bores:
                  - {name: middle, at: [5.5 km, 5.5 km], group: existing, screen_radius: 0.1 m, operation: off}
                start: {steady: with existing bores}
                """.replace("BED", bed));
        return BedAdjustment.of(
                        RunPlanner.plan(ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1)
                                .description())
                .map(BedAdjustment::words);
    }

    /** 60 m, 3e-6 1/m and 1e-6 m/d: 3600 * 3e-6 / 1e-6 = 10,800 d = 29.57 yr. */
    @Test
    void thickTightBedTakesDecades() throws InputException, IOException {
        assertEquals(
                Optional.of("30 yr"),
                words("sealing_bed: {thickness: 60 m, vertical_conductivity: 1e-6 m/d,"
                        + " specific_storage: 3e-6 1/m, head_above: 95 m}"));
    }

    /** 5 m, 2e-5 1/m and 1e-4 m/d: 25 * 2e-5 / 1e-4 = 5 d. */
    @Test
    void thinLeakyBedTakesDays() throws InputException, IOException {
        assertEquals(
                Optional.of("5.0 d"),
                words("sealing_bed: {thickness: 5 m, vertical_conductivity: 1e-4 m/d,"
                        + " specific_storage: 2e-5 1/m, head_above: 95 m}"));
    }

    /** 1 m, 1e-5 1/m and 1e-2 m/d: 1e-5 / 1e-2 = 0.001 d, which is no "0.0 d". */
    @Test
    void bedThatAnswersAtOnceIsNotToldAsZero() throws InputException, IOException {
        assertEquals(
                Optional.of("less than 0.1 d"),
                words("sealing_bed: {thickness: 1 m, vertical_conductivity: 1e-2 m/d,"
                        + " specific_storage: 1e-5 1/m, head_above: 95 m}"));
    }

    @Test
    void saysNothingOfABedThatStoresOrLeaksNothing() throws InputException, IOException {
        assertEquals(
                Optional.empty(),
                words("sealing_bed: {thickness: 5 m, vertical_conductivity: 1e-4 m/d,"
                        + " specific_storage: 0 1/m, head_above: 95 m}"));
        assertEquals(Optional.empty(), words(""));
    }
}

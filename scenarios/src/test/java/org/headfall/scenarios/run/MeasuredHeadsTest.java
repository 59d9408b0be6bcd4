package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.recording.Measurement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings of gauges and levels in a table of measurements, from the document to the table of results. */
class MeasuredHeadsTest {

    private static final String DOCUMENT = """
            title: strip
            datum: metres above an invented datum
            crs: local
            period: {from: 2027-01-01, until: 2029-01-01}
            grid:
              extent: {west: 0 km, east: 20 km, south: 0 km, north: 8 km}
              cell: 1 km
            aquifer: {transmissivity: 300 m2/d, storativity: 2e-4, top: -100 m, bottom: -200 m}
            ground: 150 m
            boundaries:
              - {name: intake, side: west, fixed_head: 200 m}
            start: {steady: without bores}
            protected:
              - {name: homestead, at: [15 km, 4 km]}
            measurements: {file: readings.csv}
            bores:
              - name: hot bore
                at: [5 km, 4 km]
                group: existing
                screen_radius: 0.1 m
                screen: {top: -780 m, bottom: -820 m}
                water_temperature: 70 degC
                operation: off
            output: {grids: yearly, bores: yearly}
            """;

    @TempDir
    Path folder;

    private Path scenario;

    @BeforeEach
    void writeDocument() throws IOException {
        scenario = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT);
    }

    private RunPlan plan(String readings) throws IOException, InputException {
        Files.writeString(folder.resolve("readings.csv"), readings);
        return RunPlanner.plan(ScenarioReader.read(scenario, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
    }

    /**
     * A gauge at 150 m on a column of 70 °C down to -800 m, densities by Kell (1975), table II: 977.770 and, at 20 °C,
     * 998.204 kg/m³. Pressure at the screen is that of the column and of the gauge; head is that of cold water.
     */
    @Test
    void aGaugeOnAHotBoreGivesTheHeadOfColdWater() throws Exception {
        RunPlan plan = plan("""
                name,date,head (m),gauge (kPa),gauge_level (m),remark
                hot bore,2027-07-01,,400,150,shut for a day
                homestead,2028-01-01,199.5,,,
                homestead,2030-01-01,187,,,after the period
                """);
        List<Measurement> measured = plan.description().measurements();
        double atScreen = 977.770 * 9.80665 * 950 + 400e3;
        assertEquals(2, measured.size());
        assertEquals(-800 + atScreen / (998.204 * 9.80665), measured.get(0).head(), 0.005);
        assertEquals(181, measured.get(0).day());
        assertEquals("gauge 400.0 kPa at 150.00 m", measured.get(0).read());
        assertEquals(new Measurement("homestead", 365, 199.5, "head 199.50 m"), measured.get(1));

        new ScenarioRun(plan, StandardOutputs.all(List.of()), (stage, fraction) -> {})
                .into(folder.resolve("run"), false);
        List<String> lines = Files.readAllLines(folder.resolve("run").resolve("measured-heads.csv"));
        assertEquals("homestead,2028-01-01,head 199.50 m,199.500,200.000,0.500", lines.get(2));
    }

    @Test
    void faultsAreNamedAllAtOnce() throws Exception {
        Files.writeString(folder.resolve("readings.csv"), """
                name,date,head (m),gauge (kPa),gauge_level (m)
                hot bore,2027-07-01,,400,
                homested,2028-01-01,199.5,,
                hot bore,2028-01-01,,,
                """);
        String problems = ScenarioReader.read(scenario, FileReach.FOLDER_OF_DOCUMENT).problems().sorted().stream()
                .map(Object::toString)
                .reduce("", (all, one) -> all + one + "\n");
        assertEquals("""
                readings.csv:2:22: reading of hot bore does not go together: found gauge; allowed: head, or both gauge and \
                gauge_level
                readings.csv:3:1: name is not a known name: found homested; allowed: the name of a bore, spring or protected \
                point; did you mean homestead?
                readings.csv:4:1: reading of hot bore is missing: found none of them; needed: head, or both gauge and gauge_level
                """, problems);
    }
}

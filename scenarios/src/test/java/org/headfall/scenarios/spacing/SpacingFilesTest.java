package org.headfall.scenarios.spacing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.solver.analytic.function.WellFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The tables of layouts in a uniform field so wide that its sides are not felt, column by column against Theis (1935), Transactions
 * of the American Geophysical Union 16, 519-524, to 0.5 %: two bores on a line, without losses, 10 m below where water is wanted.
 */
class SpacingFilesTest {

    private static final double T = 200;
    private static final double S = 1e-3;
    private static final double DAYS = 3653;
    private static final double RATE = 30 * 86.4;
    private static final double LIFT = 60;
    private static final double DEPTH = 10;
    private static final double WITHIN = 5e-3;

    private static final String DOCUMENT = """
            title: A wide field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 10 yr}
            grid: {extent: {west: 0 km, east: 300 km, south: 0 km, north: 300 km}, cell: 5 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 105 m
            protected:
              - {name: middle, at: [150 km, 150 km]}
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr]}
            spacing:
              at: [151 km, 152 km]
              layouts: [line]
              bores: [2]
              spacings: {from: 500 m, to: 8 km, steps: 3}
              rate: 30 L/s
              lift: 60 m
              for: 3653 d
              screen_radius: 100 mm
              well_loss: {quadratic: 0 s2/m5}
              delivery_head: 5 m
              efficiency: 60 %
              prices: {energy_per_kwh: 0.3, pipe_per_metre: 15, bore: 250000, paid_over: 30 yr, interest: 5 %}
            """;

    @TempDir
    static Path folder;

    @BeforeAll
    static void compare() throws Exception {
        Path file = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT);
        ScenarioReading reading = ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        SpacingResult result = SpacingComparison.in(
                plan, reading.orThrow().planning().spacing().orElseThrow(), (stage, fraction) -> {});
        SpacingFiles.write(folder, plan.description(), result);
    }

    private static List<NamedCsvRecord> csv(String file) throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(folder.resolve(file))) {
            return reader.stream().toList();
        }
    }

    private static double number(NamedCsvRecord line, String column) {
        return Double.parseDouble(line.getField(column));
    }

    private static void assertNumber(double expected, NamedCsvRecord line, String column) {
        assertEquals(expected, number(line, column), WITHIN * Math.abs(expected), column);
    }

    /** Drawdown per discharge (d/m²). */
    private static double theis(double distance) {
        return WellFunction.of(distance * distance * S / (4 * T * DAYS)) / (4 * Math.PI * T);
    }

    /** An annuity of 30 years at 5 % and water of 998.2 kg/m³ (Kell 1975), as in the test of a layout worked by hand. */
    private static void assertLine(double spacing, NamedCsvRecord line) {
        double own = theis(0.1);
        double other = theis(spacing);
        assertEquals("line", line.getField("layout"));
        assertEquals("2", line.getField("bores"));
        double yield = 2 * (LIFT - DEPTH) / (own + other);
        assertNumber(yield / 86.4, line, "total yield at the given lift, equal drawdown in each bore (L/s)");
        double apart = 2 * (LIFT - DEPTH) / own;
        assertEquals(
                100 * (1 - yield / apart),
                number(line, "yield lost to interference (%)"),
                100 * WITHIN * yield / apart);
        double lift = DEPTH + RATE / 2 * (own + other);
        assertNumber(lift, line, "mean lift at the given rate, equal rates (m)");
        assertNumber(lift, line, "greatest lift (m)");
        assertEquals(0, number(line, "mean lift by bores of the document (m)"));
        assertNumber(RATE / 2 * other, line, "interference (m)");
        assertEquals(spacing, number(line, "pipe (m)"), 0.06);
        double energy = lift * 998.2 * 9.80665 / 0.6 / 3600;
        assertNumber(energy, line, "energy (kWh/ML)");
        double annuity = 0.05 / (1 - Math.pow(1.05, -30));
        assertNumber(0.3 * energy + annuity * (15 * spacing + 2 * 250_000) / (RATE * 0.36525), line, "cost (per ML)");
        double response = number(line, "error of drawdown by a neighbour by the grid (%)");
        assertTrue(response >= 0 && response < 1, line.toString());
        // By hand: what the neighbour's drawdown may be off by is off in the lift, and in the yield by its share of it.
        double offBy = number(line, "error of mean lift by the grid (m)");
        assertTrue(offBy >= response / 100 * RATE / 2 * other - 1e-3, line.toString());
        assertEquals(
                yield / 86.4 * offBy / (lift - DEPTH),
                number(line, "error of total yield by the grid (L/s)"),
                0.05 * yield / 86.4 * offBy / (lift - DEPTH) + 2e-3);
    }

    @Test
    void everyColumnIsThatOfTheis() throws IOException {
        List<NamedCsvRecord> lines = csv("spacing.csv");
        assertEquals(3, lines.size());
        double[] spacings = {500, 2000, 8000};
        for (int i = 0; i < 3; i++) {
            assertEquals(spacings[i], number(lines.get(i), "spacing (m)"), 0.06);
            assertLine(spacings[i], lines.get(i));
        }
    }

    /** By equal marginal cost (Theis 1957, see the test of the comparison), but for the slope of W, {@code exp(-u)} of that of the logarithm. */
    @Test
    void theEconomicSpacingHasTheSameColumns() throws IOException {
        List<NamedCsvRecord> lines = csv("economic-spacing.csv");
        assertEquals(1, lines.size());
        NamedCsvRecord line = lines.get(0);
        double spacing = number(line, "spacing (m)");
        assertTrue(spacing > 500 && spacing < 8000, "spacing " + spacing);
        assertLine(spacing, line);
        assertEquals("", line.getField("remark"));
        for (NamedCsvRecord other : csv("spacing.csv")) {
            assertTrue(number(other, "cost (per ML)") >= number(line, "cost (per ML)"), other.toString());
        }
    }
}

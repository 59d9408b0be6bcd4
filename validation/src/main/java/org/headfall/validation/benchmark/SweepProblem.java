package org.headfall.validation.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.headfall.scenarios.results.ResultsFolder;

/** Sweeps of an invented field of 256 x 256 cells with 16 bores, 50 years by months, in a folder that is removed at the end. */
final class SweepProblem implements AutoCloseable {

    private static final int BORES = 16;
    private static final int PROPOSED = 12;
    private static final double CENTRE_X = 464;
    private static final double CENTRE_Y = 6364;
    private static final double SPREAD = 20;
    private static final long SEED = 8;

    private static final String LAYOUT = """
            layouts:
              - name: Field
                pattern: hexagon
                bores: 12
                spacing: 2 km
                centre: [464 km, 6364 km]
                rate: 120 L/s
                each: {group: proposed, screen_radius: 100 mm}
            """;

    private final Path folder = Files.createTempDirectory("headfall-bench");

    SweepProblem() throws IOException {
        Files.writeString(folder.resolve("scenario.yaml"), scenario("500 m", "50 yr", "[1 yr, 10 yr, 50 yr]"));
        Files.writeString(folder.resolve("small.yaml"), scenario("8 km", "1 yr", "[1 yr]"));
        Files.writeString(folder.resolve("field.yaml"), scenario("500 m", "50 yr", "[1 yr, 10 yr, 50 yr]") + LAYOUT);
    }

    private static String scenario(String cell, String period, String dates) {
        StringBuilder text = new StringBuilder(
                """
                title: An invented field to measure sweeps on
                datum: metres above an invented datum
                crs: EPSG:32743
                period: {from: 2026-07-01, for: PERIOD}
                grid:
                  extent: {west: 400 km, east: 528 km, south: 6300 km, north: 6428 km}
                  cell: CELL
                aquifer:
                  transmissivity: 250 m2/d
                  storativity: 2.0e-4
                  top: -50 m
                  bottom: -150 m
                ground: 100 m
                sealing_bed:
                  thickness: 60 m
                  vertical_conductivity: 1e-6 m/d
                  specific_storage: 3e-6 1/m
                  head_above: 95 m
                boundaries:
                  - {name: ranges, side: east, fixed_head: 125 m}
                  - {name: lower basin, side: west, far_head: 98 m, distance: 40 km}
                protected:
                  - {name: a point, at: [470 km, 6370 km]}
                limits:
                  - {name: head, quantity: floor level, at: a point, when: ever, at_least: 90 m}
                start: {steady: with existing bores}
                output: {grids: yearly, bores: monthly, report_after: DATES}
                bores:
                """.replace("CELL", cell).replace("PERIOD", period).replace("DATES", dates));
        Random random = new Random(SEED);
        for (int bore = 1; bore <= BORES; bore++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  - {name: B%d, at: [%.3f km, %.3f km], group: %s, screen_radius: 100 mm, rate: %d L/s}%n",
                    bore,
                    CENTRE_X + SPREAD * (2 * random.nextDouble() - 1),
                    CENTRE_Y + SPREAD * (2 * random.nextDouble() - 1),
                    bore <= PROPOSED ? "proposed" : "existing",
                    5 + random.nextInt(20)));
        }
        return text.toString();
    }

    /** Runs that differ in the rates of all bores. */
    Path ofRates(String name, int runs) throws IOException {
        return rates(name, "scenario.yaml", runs, "50 yr");
    }

    /** So many runs that differ in rates that rows count and not cells. */
    Path ofRows(String name, int rows) throws IOException {
        return rates(name, "small.yaml", rows, "1 yr");
    }

    private Path rates(String name, String base, int runs, String after) throws IOException {
        StringBuilder vary = new StringBuilder();
        for (int bore = 1; bore <= BORES; bore++) {
            vary.append(String.format(
                    Locale.ROOT,
                    "  - {name: rate %d, key: bores.B%d.rate, uniform: {from: 1 L/s, to: 20 L/s}}%n",
                    bore,
                    bore));
        }
        return write(name, base, vary.toString(), runs, after);
    }

    /** Runs that differ in transmissivity. */
    Path ofTransmissivity(String name, int runs) throws IOException {
        return write(
                name,
                "scenario.yaml",
                "  - {name: T, key: aquifer.transmissivity, lognormal: {median: 250 m2/d, deviation_of_log: 0.5}}\n",
                runs,
                "50 yr");
    }

    /** Layouts of a field in the same aquifer, besides the bores that are there, which differ in spacing and number. */
    Path ofLayouts(String name, int runs) throws IOException {
        String vary = """
                  - {name: spacing, key: layouts.Field.spacing, uniform: {from: 0.5 km, to: 5 km}}
                  - {name: bores, key: layouts.Field.bores, values: [4, 6, 8, 10, 12, 14, 16]}
                """;
        return write(name, "field.yaml", vary, runs, "50 yr");
    }

    private Path write(String name, String base, String vary, int runs, String after) throws IOException {
        return Files.writeString(folder.resolve(name + ".yaml"), """
                title: Sweep to be measured
                base: BASE
                vary:
                VARYdesign: latin hypercube
                samples: RUNS
                keep:
                  - {figure: head, at: a point, after: AFTER}
                  - {figure: level in bore, at: B1, after: AFTER}
                  - {figure: discharge of all bores, after: AFTER}
                """.replace("BASE", base)
                .replace("VARY", vary)
                .replace("RUNS", Integer.toString(runs))
                .replace("AFTER", after));
    }

    @Override
    public void close() throws IOException {
        ResultsFolder.delete(folder);
    }
}

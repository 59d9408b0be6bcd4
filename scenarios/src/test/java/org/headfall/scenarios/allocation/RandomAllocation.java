package org.headfall.scenarios.allocation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;

/**
 * A small field at random whose water is to be shared: transmissivity, places, springs, bores that flow by themselves or take in a
 * season, limits of several kinds and what is wanted. Limits are drawn around what there is while the bores that share rest, so that
 * some bind, and where a holder is to have a minimum some cannot be kept.
 */
final class RandomAllocation {

    private static final int CELLS = 20;
    private static final int SHARING = 3;

    private static final String DOCUMENT = """
            title: A field at random
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}, cell: 1 km}
            aquifer: {transmissivity: {raster: t.asc, unit: m2/d}, storativity: 4e-4, top: -50 m, bottom: -150 m}
            ground: 105 m
            BED
            boundaries:
              - {name: east, side: east, fixed_head: EAST m}
              - {name: west, side: west, far_head: 104 m, distance: 20 km}
            springs:
              - {name: spring, at: P0, outlet: 103 m, conductance: 40 m2/d}
              - {name: soak, at: P1, outlet: 104 m, conductance: 20 m2/d}
            protected:
              - {name: point, at: P2}
            bores:
              - {name: flowing, at: P3, group: existing, screen_radius: 75 mm, outlet_level: 101 m, well_loss: {quadratic: 200000 s2/m5}, operation: free flow}
              - {name: summer, at: P4, group: existing, screen_radius: 75 mm, rate: 4 L/s, season: {from: 1 October, to: 31 March}}
              - {name: one, at: P5, holder: Shire, group: proposed, screen_radius: 100 mm, well_loss: {quadratic: 1900 s2/m5}, lowest_level: 85 m, TAKES one}
              - {name: two, at: P6, holder: Shire, group: proposed, screen_radius: 100 mm, TAKES two}
              - {name: "three, far", at: P7, holder: Station, group: proposed, screen_radius: 100 mm, TAKES three}
            accounts: {water_year: 1 July}
            limits: LIMITS
            start: {steady: with existing bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr, 4 yr], head_tolerance: 0.5 mm}
            allocation:
              WISHES
              largest_rate: 20 L/s
              delivery_head: 40 m
              efficiency: 60 %
            """;

    private final Path folder;
    private final Random random;
    private final String text;

    /**
     * A field.
     *
     * @param folder where its files go
     * @param seed what decides it
     */
    RandomAllocation(Path folder, long seed) throws Exception {
        this.folder = folder;
        random = new Random(seed);
        transmissivity();
        String field = DOCUMENT.replace("BED", random.nextBoolean() ? "" : """
                        sealing_bed: {thickness: 60 m, vertical_conductivity: 2e-6 m/d, specific_storage: 3e-6 1/m, head_above: 104 m}\
                        """)
                .replace("EAST", number(between(118, 124)))
                .replace("WISHES", wishes(seed));
        List<String> places = places();
        for (int i = 0; i < places.size(); i++) {
            field = field.replace("P" + i, places.get(i));
        }
        AllocationDocument resting =
                AllocationDocument.of(folder, given(field, "rate: 0 L/s").replace("limits: LIMITS\n", ""));
        text = field.replace("LIMITS", limits(resting.plan()));
    }

    /** The document in which all rates are asked for; that of the last bore also of its pump. */
    AllocationDocument asked() throws IOException {
        String pump = "pump: {curve: [[0 L/s, 60 m], [6 L/s, 50 m], [12 L/s, 20 m]], delivery_level: 145 m}";
        return AllocationDocument.of(folder, given(text.replace("TAKES three", pump), "rate: 1 L/s"));
    }

    /** The document in which bores read their rates from {@code rates.csv}. */
    AllocationDocument fedBack() throws IOException {
        return AllocationDocument.of(
                folder,
                text.replace("TAKES one", "rate: {file: rates.csv, column: one}")
                        .replace("TAKES two", "rate: {file: rates.csv, column: two}")
                        .replace("TAKES three", "rate: {file: rates.csv, column: \"three, far\"}"));
    }

    private static String given(String text, String rate) {
        return text.replaceAll("TAKES (one|two|three)", rate);
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }

    private void transmissivity() throws IOException {
        StringBuilder raster = new StringBuilder(
                "ncols %d%nnrows %d%nxllcorner 0%nyllcorner 0%ncellsize 1000%n".formatted(CELLS, CELLS));
        for (int row = 0; row < CELLS; row++) {
            raster.append(IntStream.range(0, CELLS)
                            .mapToObj(column -> number(200 * Math.exp(0.5 * random.nextGaussian())))
                            .collect(Collectors.joining(" ")))
                    .append('\n');
        }
        Files.writeString(folder.resolve("t.asc"), raster);
    }

    /** Places anywhere in cells of their own that do not touch: every other cell of every other row. */
    private List<String> places() {
        List<String> places = new ArrayList<>();
        for (int row = 2; row < CELLS - 2; row += 2) {
            for (int column = 2; column < CELLS - 2; column += 2) {
                places.add("[%s km, %s km]"
                        .formatted(number(column + random.nextDouble()), number(row + random.nextDouble())));
            }
        }
        Collections.shuffle(places, random);
        return places.subList(0, 5 + SHARING);
    }

    private String wishes(long seed) {
        String seasons = random.nextBoolean()
                ? ""
                : "  seasons: [{from: 1 October, to: 31 March}, {from: 1 April, to: 30 September}]\n";
        String minimum = seed % 4 == 3 ? "  minimums: [{holder: Shire, at_least: 20 L/s}]\n" : "";
        String goal = seed % 4 == 1
                ? "goal: least energy\n  total: 14 L/s\n"
                : seed % 4 == 2 ? "goal: least effect on springs\n  total: 14 L/s\n" : "goal: largest yield\n";
        return goal + seasons + minimum + "  rates_change_after: " + (1 + random.nextInt(2)) + " yr";
    }

    /** Limits of all kinds, of which half are left out, by what there is while the bores that share rest. */
    private String limits(RunPlan resting) {
        List<StationSeries> series = RunInMemory.stations(resting);
        double head =
                least(series.get(resting.description().stationIndex("point")).head());
        StationSeries flowing = series.get(resting.description().stationIndex("flowing"));
        double flow = least(flowing.discharge()) / 86.4;
        double pressure = 9.79 * (least(flowing.head()) - between(0.2, 1.5) - 90);
        double soak =
                least(series.get(resting.description().stationIndex("soak")).discharge()) / 86.4;
        List<String> all = new ArrayList<>(List.of(
                effect("drawdown, at: spring, at_most: " + number(between(0.3, 2)) + " m"),
                effect("drawdown, at: [point, flowing], at_most: " + number(between(0.5, 3)) + " m"),
                effect("spring discharge, at: spring, at_least: " + number(between(50, 95)) + " %"),
                "quantity: floor level, at: point, at_least: " + number(head - between(0.3, 3)) + " m",
                "quantity: pressure, gauge_level: 90 m, at: flowing, at_least: " + number(pressure) + " kPa",
                "quantity: decline rate, at: point, over: 1 yr, at_most: " + number(between(0.2, 1)) + " m/yr",
                "quantity: share of available head, above: aquifer top, at: point, at_least: "
                        + number(100 * (1 - between(0.5, 3) / (head + 50)))
                        + " %",
                "quantity: flow, at: flowing, at_least: " + number(flow * between(0.6, 0.98)) + " L/s",
                "quantity: spring discharge, at: soak, at_least: " + number(soak * between(0.3, 0.95)) + " L/s",
                "quantity: volume, at: proposed bores, at_most: " + number(between(60, 400)) + " ML"));
        Collections.shuffle(all, random);
        String[] whens = {"ever", "ever", "within 2 yr", "after 1 yr"};
        return IntStream.range(0, all.size() / 2 + 1)
                .mapToObj(i -> "\n  - {name: limit " + i + ", " + all.get(i) + ", when: "
                        + whens[random.nextInt(whens.length)] + "}")
                .collect(Collectors.joining());
    }

    private static String effect(String limit) {
        return "cause: proposed bores, compared_with: without them, quantity: " + limit;
    }

    private static double least(double[] values) {
        return Arrays.stream(values).min().orElseThrow();
    }
}

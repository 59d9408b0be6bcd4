package org.headfall.scenarios.sweep.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.raster.RasterLimits;
import org.headfall.scenarios.raster.RasterReader;
import org.headfall.scenarios.sweep.SweepFolder;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepAnswersTest {

    /** Water that enters along the east side flows straight to a fixed head in the west. */
    private static final String STRAIGHT_FLOW = """
            title: Straight flow
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 1 yr}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 10 km}, cell: 2 km}
            aquifer: {transmissivity: 250 m2/d, storativity: 2.0e-4, top: 0 m, bottom: -100 m}
            ground: 100 m
            boundaries:
              - {name: west, side: west, fixed_head: 100 m}
              - {name: east, side: east, given_flow: 10000 m3/d}
            protected:
              - {name: middle, at: [11 km, 5 km]}
            start: {steady: without bores}
            output: {grids: yearly, bores: yearly, report_after: [1 yr]}
            """;

    private static final String SWEEP = """
            title: How high heads stand
            base: scenario.yaml
            vary:
              - {name: T, key: aquifer.transmissivity, lognormal: {median: 250 m2/d, deviation_of_log: 0.6}}
              - {name: S, key: aquifer.storativity, uniform: {from: 1e-4, to: 3e-4}}
            design: latin hypercube
            samples: 200
            keep:
              - {figure: head, at: middle, after: 1 yr}
            ask:
              ranking: {figure: head at middle after 1 yr, aim: smallest}
              probability:
                - {figure: head at middle after 1 yr, above: 150 m}
                - {figure: head at middle after 1 yr, above: 130 m}
              sensitivity: [head at middle after 1 yr]
            """;

    @TempDir
    private Path temporary;

    /**
     * Darcy's law: head in the middle is {@code 100 m + q x / T} with q the flow a metre of width, so that it is above a
     * bound with the probability that a lognormal T is below {@code q x / (bound - 100 m)}.
     */
    @Test
    void findsTheProbabilityOfPassingABoundOfOneLognormalTransmissivity() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(folder.base(), STRAIGHT_FLOW);
        SweepDocument sweep = folder.read(SWEEP);
        folder.run(SWEEP, SweepFolder.settings(2));
        SweepTable table;
        try (SweepStore store = SweepStore.read(folder.store())) {
            table = SweepTable.read(sweep, store);
        }
        double flow = 10_000.0 / 10_000 * 11_000;
        double[] heads = table.figure("head at middle after 1 yr");
        double[] transmissivity = table.input("T");
        for (int i = 0; i < 200; i++) {
            assertEquals(100 + flow / transmissivity[i], heads[i], 1e-3 * flow / transmissivity[i] + 1e-3);
        }
        List<Likelihood> likelihoods = new SweepAnswers(table).likelihoods();
        LogNormalDistribution lognormal = new LogNormalDistribution(Math.log(250), 0.6);
        // A Latin hypercube of one variable that decides alone is off by at most one sample.
        assertEquals(
                lognormal.cumulativeProbability(flow / 50),
                likelihoods.get(0).share().value(),
                1.0 / 200 + 1e-9);
        assertEquals(
                lognormal.cumulativeProbability(flow / 30),
                likelihoods.get(1).share().value(),
                1.0 / 200 + 1e-9);
        assertTrue(likelihoods.get(0).sampled());
        requireThatTransmissivityDecides(table);
    }

    private static void requireThatTransmissivityDecides(SweepTable table) {
        SweepAnswers answers = new SweepAnswers(table);
        List<Influence> influences = new Influences(table).byFigure().get("head at middle after 1 yr");
        assertEquals("T", influences.get(0).variable().name());
        assertEquals(-1, influences.get(0).rank().value(), 1e-6);
        assertEquals("falls with it", influences.get(0).words());
        assertEquals(0, influences.get(1).rank().value(), 0.2);
        assertEquals("not told apart from none", influences.get(1).words());
        int best = answers.ranked().get(0);
        for (double other : table.input("T")) {
            assertTrue(table.input("T")[best] >= other);
        }
    }

    /** The lowest head is asked for, and a floor under it. */
    @Test
    void namesTheBestThatKeepsTheLimits() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(
                folder.base(),
                STRAIGHT_FLOW
                        + "limits:\n  - {name: floor, quantity: floor level, at: middle, when: ever, at_least: 120 m}\n");
        String text = SWEEP.replace("samples: 200", "samples: 40");
        SweepDocument sweep = folder.read(text);
        folder.run(text, SweepFolder.settings(2));
        try (SweepStore store = SweepStore.read(folder.store())) {
            SweepTable table = SweepTable.read(sweep, store);
            SweepAnswers answers = new SweepAnswers(table);
            double[] heads = table.figure("head at middle after 1 yr");
            int within = answers.bestWithinLimits().orElseThrow();
            assertTrue(heads[answers.ranked().get(0)] < 120);
            assertEquals(Arrays.stream(heads).filter(head -> head > 120).min().orElseThrow(), heads[within], 0.05);
            assertTrue(answers.limitsOfTheBest().contains("run " + (within + 1) + "."), answers::limitsOfTheBest);
        }
    }

    /**
     * Of the runs for Sobol indices those of the two base sets alone are independent (Saltelli and others 2010); the others
     * share values with them, as their definition says.
     */
    @Test
    void countsRunsThatMixTwoSamplesForIndicesAlone() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(folder.base(), STRAIGHT_FLOW);
        String text = SWEEP.replace("latin hypercube", "sobol indices").replace("samples: 200", "samples: 16");
        SweepTable table = made(folder, text);
        Set<Double> values = new HashSet<>();
        int independent = 0;
        for (int run = 0; run < 64; run++) {
            boolean newT = values.add(table.input("T")[run]);
            boolean newS = values.add(table.input("S")[run]);
            boolean fresh = newT && newS;
            assertEquals(fresh, table.runs().sample(run).isPresent(), "run " + run);
            independent += fresh ? 1 : 0;
        }
        assertEquals(32, independent);
        assertEquals(32, new SweepAnswers(table).likelihoods().get(0).share().of());
        Influence most = new Influences(table)
                .byFigure()
                .get("head at middle after 1 yr")
                .get(0);
        assertEquals(32, most.samples());
        assertEquals(Ranks.interval(-1, 32)[1], most.rank().high(), 1e-9);
    }

    private static SweepTable made(SweepFolder folder, String text) throws InputException, IOException {
        SweepDocument sweep = folder.read(text);
        folder.run(text, SweepFolder.settings(2));
        try (SweepStore store = SweepStore.read(folder.store())) {
            return SweepTable.read(sweep, store);
        }
    }

    /** Samples that are repeated for each of three choices are no more samples, and runs of a choice alone make a probability. */
    @Test
    void countsSamplesThatAreRepeatedForChoicesOnce() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(folder.base(), STRAIGHT_FLOW);
        String text = SWEEP.replace(
                        "design: latin",
                        "  - {name: inflow, key: boundaries.east.given_flow, values: [9000 m3/d, 9100 m3/d, 9200 m3/d]}\n"
                                + "for_each_of: [inflow]\ndesign: latin")
                .replace("samples: 200", "samples: 20");
        SweepTable table = made(folder, text);
        List<Influence> influences = new Influences(table).byFigure().get("head at middle after 1 yr");
        assertEquals(20, influences.get(0).samples());
        // Darcy: heads over the west go as inflow over T, so the difference of the choices in each sample is known.
        Influence inflow = influences.stream()
                .filter(influence -> influence.variable().name().equals("inflow"))
                .findFirst()
                .orElseThrow();
        double[] rises = Arrays.stream(table.input("T"))
                .limit(20)
                .map(transmissivity -> 200.0 / 10_000 * 11_000 / transmissivity)
                .toArray();
        SummaryStatistics pairs = new SummaryStatistics();
        Arrays.stream(rises).forEach(pairs::addValue);
        double standardError = pairs.getStandardDeviation() / Math.sqrt(20);
        assertEquals(pairs.getMean(), inflow.swing().high() - inflow.swing().low(), 2e-3);
        // Student's t of 19 degrees of freedom, 97.5 %: 2.093, Fisher and Yates (1963), table III.
        assertEquals(2.093 * standardError, inflow.swing().error(), 2e-3 * standardError + 1e-3);
        assertTrue(inflow.swing().isToldApart());
        new SweepAnswers(table)
                .likelihoods()
                .forEach(likelihood -> assertEquals(20, likelihood.share().of()));
    }

    /**
     * By Darcy's law head goes as inflow over T, so less inflow is better in every sample, though the luckiest run of any
     * choice beats most runs of the best; storativity changes nothing in steady flow.
     */
    @Test
    void ranksChoicesOverTheirSamples() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(
                folder.base(),
                STRAIGHT_FLOW
                        + "limits:\n  - {name: floor, quantity: floor level, at: middle, when: ever, at_least: 120 m}\n");
        String text = SWEEP.replace("uniform: {from: 1e-4, to: 3e-4}}", """
                        values: [1e-4, 3e-4]}
                  - {name: inflow, key: boundaries.east.given_flow, values: [9200 m3/d, 9000 m3/d, 9100 m3/d]}
                for_each_of: [inflow, S]""").replace("samples: 200", "samples: 20");
        for (String aim : List.of("aim: smallest", "aim: smallest, reached_in: 90 %")) {
            SweepTable table = made(folder, text.replace("aim: smallest", aim));
            RankedChoices choices = RankedChoices.of(table).orElseThrow();
            List<RankedChoices.Choice> ranked = choices.ranked();
            assertEquals(6, ranked.size());
            assertEquals(20, choices.samples());
            for (int i = 0; i < 6; i++) {
                int inflow = 9000 + 100 * (i / 2);
                assertTrue(ranked.get(i).name().contains("inflow " + inflow + " m3/d"), ranked::toString);
                assertEquals(i < 2, ranked.get(i).likeTheBest(), aim + " " + ranked);
                double[] heads = Arrays.stream(table.input("T"))
                        .limit(20)
                        .map(transmissivity -> 100 + inflow / 10_000.0 * 11_000 / transmissivity)
                        .toArray();
                double expected = aim.contains("reached_in")
                        ? new Percentile()
                                .withEstimationType(Percentile.EstimationType.R_7)
                                .evaluate(heads, 90)
                        : Arrays.stream(heads).average().orElseThrow();
                assertEquals(expected, ranked.get(i).value(), 2e-3 * (expected - 100));
                assertEquals(
                        (double)
                                Arrays.stream(heads).filter(head -> head >= 120).count(),
                        ranked.get(i).keepsLimits().count(),
                        1);
            }
            String sentence = new ChoiceSentences(table, choices).best().orElseThrow();
            assertTrue(sentence.contains("Not told apart from it: S "), sentence);
            assertTrue(sentence.contains("no choice keeps them in each of its runs"), sentence);
        }
    }

    /** The top at -99 m is above the bottom in one of 20 samples alone; the other choices are compared over all 20. */
    @Test
    void aChoiceOfFewFinishedRunsDoesNotSpoilTheOthers() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(folder.base(), STRAIGHT_FLOW);
        String text = SWEEP.replace("design: latin", """
                  - {name: bottom, key: aquifer.bottom, uniform: {from: -100 m, to: -80 m}}
                  - {name: top, key: aquifer.top, values: [0 m, -99 m, 20 m]}
                for_each_of: [top]
                design: latin""").replace("samples: 200", "samples: 20");
        SweepTable table = made(folder, text);
        assertEquals(19, table.failures().count());
        RankedChoices choices = RankedChoices.of(table).orElseThrow();
        assertEquals(20, choices.samples());
        assertEquals(2, choices.ranked().size());
        String sentence = new ChoiceSentences(table, choices).best().orElseThrow();
        assertTrue(
                sentence.contains(
                        "Not compared, with figures of fewer than half as many samples as others: top -99 m."),
                sentence);
    }

    /** A field of little effect beside a number that decides, and of much beside one that decides nothing. */
    @ParameterizedTest
    @CsvSource({"20000, 0.05, false", "2001, 1.5, true"})
    void saysThatARandomFieldWasNotRanked(String most, String deviation, boolean outweighs)
            throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(folder.base(), STRAIGHT_FLOW);
        String text = SWEEP.replace(
                        "  - {name: T, key: aquifer.transmissivity, lognormal: {median: 250 m2/d, deviation_of_log: 0.6}}\n",
                        "  - {name: field, key: aquifer.transmissivity, random_field: {median: 250 m2/d,"
                                + " deviation_of_log: " + deviation + ", variogram: exponential, range: 12 km}}\n"
                                + "  - {name: inflow, key: boundaries.east.given_flow, uniform: {from: 2000 m3/d, to: "
                                + most + " m3/d}}\n")
                .replace("samples: 200", "samples: 40");
        SweepDocument sweep = folder.read(text);
        folder.run(text, SweepFolder.settings(2));
        try (SweepStore store = SweepStore.read(folder.store())) {
            Unranked unranked = new Influences(SweepTable.read(sweep, store))
                    .unranked("head at middle after 1 yr")
                    .orElseThrow();
            assertEquals(List.of("field"), unranked.variables());
            assertEquals(outweighs, unranked.outweighs(), unranked::words);
        }
    }

    /**
     * Darcy's law again: head in a cell at x is {@code 100 m + q x / T}, so that it falls below a floor of 120 m where T is
     * above {@code q x / 20 m}: the farther east, the less likely, by the lognormal distribution of T.
     */
    @Test
    void mapsTheProbabilityOfCrossingALimit() throws InputException, IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(
                folder.base(),
                STRAIGHT_FLOW
                        + "limits:\n  - {name: floor, quantity: floor level, at: every cell, when: ever, at_least: 120 m}\n");
        SweepDocument sweep = folder.read(SWEEP);
        folder.run(SWEEP, SweepFolder.settings(2));
        SweepTable table;
        try (SweepStore store = SweepStore.read(folder.store())) {
            table = SweepTable.read(sweep, store);
        }
        Exceedance.Map map = table.exceedance().maps().get(0);
        assertEquals(200, map.runs());
        LogNormalDistribution lognormal = new LogNormalDistribution(Math.log(250), 0.6);
        for (int column = 0; column < 10; column++) {
            double x = 1000 + 2000 * column;
            double expected = 1 - lognormal.cumulativeProbability(x / 20);
            // A Latin hypercube of one variable that decides alone is off by at most one sample.
            assertEquals(expected, map.share()[2 * 10 + column], 1.0 / 200 + 1e-9, "x " + x);
        }
        table.exceedance().write(temporary);
        assertTrue(Files.size(temporary.resolve("exceedance.nc")) > 1000);
        double[] raster = new RasterReader(RasterLimits.DEFAULT)
                .read(temporary.resolve("exceedance-1.tif"))
                .raster()
                .values();
        assertEquals(map.share()[23], raster[23], 1e-6);
    }
}

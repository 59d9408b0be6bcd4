package org.headfall.scenarios.sweep.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.sweep.SweepFolder;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepReaderTest {

    @TempDir
    private Path temporary;

    @Test
    void readsTheExample() throws InputException, IOException {
        SweepDocument sweep = SweepReader.read(
                Path.of("examples/sweep/sweep.yaml"), FileReach.FOLDER_OF_DOCUMENT, SweepFolder.PROGRAM);
        RunList runs = new RunList(sweep);
        assertEquals(3 * 64, runs.size());
        assertEquals("10 L/s", text(runs.get(0), "rate of Town 1"));
        assertEquals("30 L/s", text(runs.get(191), "rate of Town 1"));
        // The same aquifers for each rate.
        assertEquals(text(runs.get(5), "transmissivity"), text(runs.get(64 + 5), "transmissivity"));
        assertTrue(text(runs.get(5), "transmissivity").endsWith(" m2/d"));
        assertEquals(
                List.of(
                        "loss at Coolabah Spring after 10 yr (m)",
                        "level in bore at Town 1 after 20 yr (m above datum)",
                        "discharge at Town 1 after 20 yr (m3/d)",
                        "stops flowing at Stock bore (yr after the start)",
                        "balance error (%)",
                        "margin of the spring keeps its head at Coolabah Spring (m)",
                        "first crossing of the spring keeps its head at Coolabah Spring (yr after the start)"),
                sweep.figuresOfTables().stream().map(KeptFigure::heading).toList());
        assertEquals(7 + 25, sweep.figures().size());
    }

    @ParameterizedTest
    @CsvSource({"layouts, 72", "pictures, 128"})
    void readsTheOtherExamples(String name, int runs) throws InputException, IOException {
        SweepDocument sweep = SweepReader.read(
                Path.of("examples/sweep/" + name + ".yaml"), FileReach.FOLDER_OF_DOCUMENT, SweepFolder.PROGRAM);
        assertEquals(runs, new RunList(sweep).size());
        for (int index : new int[] {0, runs / 2, runs - 1}) {
            assertEquals(
                    "",
                    sweep.base()
                            .read(sweep.base().with(new RunList(sweep).get(index)))
                            .problems()
                            .toText());
        }
    }

    private static String text(Map<Variable, Input> inputs, String name) {
        return inputs.entrySet().stream()
                .filter(input -> input.getKey().name().equals(name))
                .findFirst()
                .orElseThrow()
                .getValue()
                .text();
    }

    @Test
    void combinesAllValuesOfAFullFactorialOnce() throws InputException, IOException {
        RunList runs = new RunList(new SweepFolder(temporary).read(SweepFolder.SIX_RUNS));
        List<String> all = runs.stream()
                .map(inputs -> text(inputs, "rate") + " " + text(inputs, "transmissivity"))
                .toList();
        assertEquals(
                List.of(
                        "10 L/s 100 m2/d",
                        "10 L/s 200 m2/d",
                        "10 L/s 400 m2/d",
                        "20 L/s 100 m2/d",
                        "20 L/s 200 m2/d",
                        "20 L/s 400 m2/d"),
                all);
    }

    @Test
    void aChangedDocumentReadsAsWhatItSays() throws InputException, IOException {
        SweepDocument sweep = new SweepFolder(temporary).read(SweepFolder.SIX_RUNS);
        String text = DocumentText.of(sweep.base().with(new RunList(sweep).get(4)));
        assertTrue(text.contains("transmissivity: 200 m2/d"), text);
        assertTrue(text.contains("rate: 20 L/s"), text);
        Path copy = Files.writeString(temporary.resolve("copy.yaml"), text);
        assertTrue(org.headfall.scenarios.reading.ScenarioReader.read(copy, FileReach.FOLDER_OF_DOCUMENT)
                .problems()
                .isEmpty());
    }

    /** Every problem at once, each with its place. */
    @Test
    void reportsEveryProblem() {
        List<Problem> problems = problems("""
                title: Wrong in many ways
                base: scenario.yaml
                vary:
                  - {name: rate, key: bores.Town 2.rate, values: []}
                  - {name: storativity, key: aquifer.storativity, range: {from: 2e-4, to: 1e-4, step: 1e-5}}
                  - {name: T, key: aquifer.transmissivity, uniform: {from: 100 m2/d, to: 2 km2/d}}
                  - {name: again, key: aquifer.storativity, values: [1e-4]}
                  - {name: T, key: ground, normal: {mean: 100 m, deviation: 0 m}}
                design: latin hypercup
                keep:
                  - {figure: los, at: Coolabah Spring, after: 2 yr}
                  - {figure: loss, at: Coolabah, after: 2 yr}
                  - {figure: loss, at: Coolabah Spring, after: 3 yr}
                ask:
                  ranking: {figure: loss, aim: biggest}
                colour: red
                """);
        assertEquals(
                List.of(
                        "4 UNKNOWN_KEY",
                        "4 EMPTY_VALUE",
                        "5 NO_ROWS",
                        "6 WRONG_UNIT",
                        "7 DUPLICATE_KEY",
                        "8 DUPLICATE_NAME",
                        "8 OUT_OF_RANGE",
                        "9 NOT_A_CHOICE",
                        "11 NOT_A_CHOICE",
                        "12 UNKNOWN_NAME",
                        "13 OUT_OF_RANGE",
                        "15 UNKNOWN_NAME",
                        "15 NOT_A_CHOICE",
                        "16 UNKNOWN_KEY"),
                problems.stream()
                        .map(problem -> problem.place().line() + " " + problem.kind())
                        .toList(),
                () -> problems.toString());
        assertEquals("bores.Town 1.rate", problems.get(0).finding().suggestion());
        assertEquals("latin hypercube", problems.get(7).finding().suggestion());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "design: full factorial | design: latin hypercube | MISSING_KEY",
                "design: full factorial | {design: sobol sequence, samples: 0} | OUT_OF_RANGE",
                "values: [10 L/s, 20 L/s] | uniform: {from: 1 L/s, to: 2 L/s} | CONFLICTING_KEYS",
                "base: scenario.yaml | base: scenary.yaml | FILE_MISSING",
                "values: [10 L/s, 20 L/s] | range: {from: 1 L/s, to: 2 L/s, step: 0 L/s} | OUT_OF_RANGE",
                "values: [10 L/s, 20 L/s] | range: {from: 1 L/s, to: 2 L/s, step: 1e-9 L/s} | TOO_MANY_ROWS",
            })
    void refusesDesignsThatCannotBe(String found, String instead, ProblemKind kind) {
        String lines = instead.startsWith("{design")
                ? instead.substring(1, instead.length() - 1).replace(", ", "\n")
                : instead;
        List<Problem> problems = problems(SweepFolder.SIX_RUNS.replace(found, lines));
        assertTrue(problems.stream().anyMatch(problem -> problem.kind() == kind), () -> problems.toString());
    }

    /** A share of samples that a value is reached in makes sense between none and all of the samples of a choice. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"rate | 100 % | OUT_OF_RANGE", "rate | 90 m | OUT_OF_RANGE", "'' | 90 % | CONFLICTING_KEYS"})
    void refusesSharesThatNoChoiceReaches(String choice, String share, ProblemKind kind) {
        List<Problem> problems = problems(SweepFolder.SIX_RUNS.replace(
                        "design: full factorial", "design: latin hypercube\nsamples: 4\nfor_each_of: [" + choice + "]")
                + """
                ask:
                  ranking: {figure: loss at Coolabah Spring after 2 yr, aim: smallest, reached_in: SHARE}
                """.replace("SHARE", share));
        assertEquals(List.of(kind), problems.stream().map(Problem::kind).toList(), problems::toString);
    }

    /** Values are read as a scenario would read them, before any run; nothing that follows from a problem is one. */
    @Test
    void findsWrongValuesWhereTheyStandAndNothingThatFollows() {
        List<Problem> problems = problems("""
                title: Wrong values
                base: scenario.yaml
                vary:
                  - {name: rate, key: bores.Town 1.rate, values: [10 L/s, 20 m]}
                  - {name: T, key: aquifer.transmissivity, lognormal: {median: 250 m2, deviation_of_log: 0.5}}
                  - {name: S, key: aquifer.storativity, values: []}
                  - {name: bed, key: sealing_bed.thickness, normal: {mean: 60 m, deviation: 0 m}}
                  - name: ground
                    key: ground
                    values: [{raster: nowhere.asc}, 100 m]
                  - name: conductivity
                    key: sealing_bed.vertical_conductivity
                    random_field: {median: 1e-6 m/d, deviation_of_log: 1, variogram: exponental, range: 9 km}
                correlations:
                  - {between: [bed, T], rank: 0.5}
                design: latin hypercube
                samples: 4
                for_each_of: [S]
                keep:
                  - {figure: loss, at: Coolabah, after: 2 yr}
                ask:
                  ranking: {figure: loss at Coolabah after 2 yr, aim: largest}
                  sensitivity: [loss at Coolabah after 2 yr]
                """);
        assertEquals(
                List.of(
                        "4:59 bores[1].rate WRONG_UNIT",
                        "5:64 aquifer.transmissivity WRONG_UNIT",
                        "6:49 vary[3].values EMPTY_VALUE",
                        "7:77 vary[4].normal.deviation OUT_OF_RANGE",
                        "10:23 ground.raster FILE_MISSING",
                        "13:70 sealing_bed.vertical_conductivity.random.variogram NOT_A_CHOICE",
                        "20:24 keep[1].at UNKNOWN_NAME"),
                problems.stream()
                        .map(problem -> problem.place().line() + ":"
                                + problem.place().column() + " " + problem.subject() + " " + problem.kind())
                        .toList(),
                () -> problems.toString());
    }

    /** What is wrong with numbers of a distribution, a list, a range, a field or a correlation is found before the first run. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "values: [2e-4, 1e-4, 2.0e-4] | vary[1].values DUPLICATE_NAME 2.0e-4",
                "values: [NaN, 1e-4] | aquifer.storativity NOT_A_NUMBER NaN",
                "values: [2] | aquifer.storativity OUT_OF_RANGE 2",
                "range: {from: 1e-4, to: 2e-4, step: -1e-5} | vary[1].range.step OUT_OF_RANGE -1e-5",
                "range: {from: 1e-4, to: 2e-4, step: .inf} | vary[1].range.step NOT_A_NUMBER .inf",
                "range: {from: 1, to: 1.00000001, step: 1e-9} | vary[1].range.step OUT_OF_RANGE 1e-9",
                "range: {from: 2, to: 3, step: 0.5} | aquifer.storativity OUT_OF_RANGE 2",
                "uniform: {from: 2e-4, to: 1e-4} | vary[1].uniform.to OUT_OF_RANGE 1e-4",
                "uniform: {from: -1e308, to: 1e308} | S OUT_OF_RANGE so large that its values have no number",
                "uniform: {from: 2, to: 3} | aquifer.storativity OUT_OF_RANGE 2.5",
                "uniform: {from: -2e-4, to: -1e-4} | aquifer.storativity OUT_OF_RANGE -1.5E-4",
                "normal: {mean: 2e-4, deviation: 0, at_least: 1e-4} | vary[1].normal.deviation OUT_OF_RANGE 0",
                "normal: {mean: 2e-4, deviation: 1e-5, at_least: 1e-3} | vary[1].normal.at_least OUT_OF_RANGE 1e-3",
                "normal: {mean: 2e-4, deviation: 1e-5, at_most: 0} | vary[1].normal.at_most OUT_OF_RANGE 0",
                "normal: {mean: 2e-4, deviation: 1e-5, at_least: 2e-4, at_most: 1e-4} | vary[1].normal.at_most OUT_OF_RANGE 1e-4",
                "normal: {mean: 2e-4, deviation: 1e-5, at_most: 1 m} | S WRONG_UNIT 2.0E-4, 1.0E-5, 1 m",
                "lognormal: {median: 2e-4, deviation_of_log: nan} | vary[1].lognormal.deviation_of_log NOT_A_NUMBER nan",
                "lognormal: {median: 1e308, deviation_of_log: 9} | S OUT_OF_RANGE so large that its values have no number",
                "triangular: {least: 3e-4, likely: 2e-4, most: 4e-4} | vary[1].triangular.likely OUT_OF_RANGE 2e-4",
                "random_field: {median: 2e-4, deviation_of_log: 0, variogram: spherical, range: 9 km}"
                        + " | aquifer.storativity.random.deviation_of_log OUT_OF_RANGE 0",
                "random_field: {median: 2e-4, deviation_of_log: 1, variogram: spherical, range: -9 km}"
                        + " | aquifer.storativity.random.range OUT_OF_RANGE -9 km",
                "random_field: {median: 2e-4, deviation_of_log: 1, variogram: spherical, range: 0 km, fields: 3}"
                        + " | aquifer.storativity.random.range OUT_OF_RANGE 0 km",
            })
    void findsNumbersThatCannotBeBeforeTheFirstRun(String variation, String problem) {
        List<Problem> problems = problems("""
                title: A wrong number
                base: scenario.yaml
                vary:
                  - name: S
                    key: aquifer.storativity
                    VARIATION
                design: latin hypercube
                samples: 4
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                """.replace("VARIATION", variation));
        assertEquals(
                List.of(problem), problems.stream().map(SweepReaderTest::words).toList(), problems::toString);
        assertTrue(
                problems.get(0).place().line() == 6 && problems.get(0).place().column() > 4, problems::toString);
    }

    private static String words(Problem problem) {
        return problem.subject() + " " + problem.kind() + " "
                + problem.finding().found();
    }

    /** A value out of range by itself is none where it fits together with another that varies too. */
    @Test
    void leavesToTheRunsWhatOtherValuesMend() throws InputException, IOException {
        SweepDocument sweep = new SweepFolder(temporary).read("""
                title: A deeper aquifer
                base: scenario.yaml
                vary:
                  - {name: top, key: aquifer.top, uniform: {from: -400 m, to: -350 m}}
                  - {name: bottom, key: aquifer.bottom, uniform: {from: -600 m, to: -500 m}}
                design: latin hypercube
                samples: 4
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                """);
        assertEquals(4, new RunList(sweep).size());
    }

    @Test
    void namesWhatIsGivenTwice() {
        List<Problem> problems = problems("""
                title: Twice
                base: scenario.yaml
                vary:
                  - {name: T, key: aquifer.transmissivity, uniform: {from: 100 m2/d, to: 200 m2/d}}
                  - {name: T, key: ground, uniform: {from: 90 m, to: 100 m}}
                  - {name: S, key: aquifer.storativity, uniform: {from: 1e-4, to: 2e-4}}
                  - {name: rate, key: bores.Town 1.rate, values: [10 L/s, 20 L/s]}
                correlations:
                  - {between: [T, S], rank: 0.5}
                  - {between: [S, T], rank: 0.5}
                  - {between: [T, S], rank: 0.4}
                design: latin hypercube
                samples: 4
                for_each_of: [rate, rate]
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                ask:
                  trade_off:
                    - {figure: loss at Coolabah Spring after 2 yr, aim: largest}
                    - {figure: loss at Coolabah Spring after 2 yr, aim: smallest}
                  probability:
                    - {figure: loss at Coolabah Spring after 2 yr, above: NaN}
                  sensitivity: [loss at Coolabah Spring after 1 yr, loss at Coolabah Spring after 1 yr]
                """);
        assertEquals(
                List.of(
                        "5:12 vary[2].name DUPLICATE_NAME",
                        "10:15 correlations[2].between DUPLICATE_NAME",
                        "11:15 correlations[3].between DUPLICATE_NAME",
                        "14:14 for_each_of DUPLICATE_NAME",
                        "21:16 ask.trade_off[2].figure DUPLICATE_NAME",
                        "23:59 ask.probability[1].above NOT_A_NUMBER",
                        "24:16 ask.sensitivity DUPLICATE_NAME"),
                problems.stream()
                        .map(problem -> problem.place().line() + ":"
                                + problem.place().column() + " " + problem.subject() + " " + problem.kind())
                        .toList(),
                problems::toString);
    }

    /** Three variables, 0.9 and 0.9: no third number follows both of two that know nothing of each other. */
    @ParameterizedTest
    @CsvSource({"'', false", "'  - {between: [a, c], rank: 0.7}', true", "'  - {between: [a, c], rank: -0.7}', false"})
    void correlationsMustNotContradictEachOther(String third, boolean possible) throws InputException, IOException {
        String sweep = """
                title: Three
                base: scenario.yaml
                vary:
                  - {name: a, key: aquifer.transmissivity, uniform: {from: 100 m2/d, to: 200 m2/d}}
                  - {name: b, key: aquifer.storativity, uniform: {from: 1e-4, to: 2e-4}}
                  - {name: c, key: ground, uniform: {from: 90 m, to: 100 m}}
                correlations:
                  - {between: [a, b], rank: 0.9}
                  - {between: [b, c], rank: 0.9}
                THIRD
                design: latin hypercube
                samples: 4
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                """.replace("THIRD\n", third.isEmpty() ? "" : third + "\n");
        if (possible) {
            assertEquals(
                    3, new SweepFolder(temporary).read(sweep).correlations().size());
        } else {
            List<Problem> problems = problems(sweep);
            assertEquals(1, problems.size(), problems::toString);
            assertEquals("correlations", problems.get(0).subject());
            assertTrue(problems.get(0).finding().allowed().contains("that of a and b from "), problems::toString);
        }
    }

    @Test
    void reportsProblemsOfTheBaseScenarioToo() throws IOException {
        SweepFolder folder = new SweepFolder(temporary);
        Files.writeString(
                folder.base(), Files.readString(folder.base()).replace("storativity: 2.0e-4", "storativity: 2"));
        InputException refused = assertThrows(
                InputException.class,
                () -> folder.read(SweepFolder.SIX_RUNS.replace("design: full factorial", "design: all")));
        assertEquals(
                List.of("scenario.yaml OUT_OF_RANGE", "sweep.yaml NOT_A_CHOICE"),
                refused.problems().stream()
                        .map(problem -> problem.place().file() + " " + problem.kind())
                        .toList());
    }

    private List<Problem> problems(String sweep) {
        return assertThrows(InputException.class, () -> new SweepFolder(temporary).read(sweep))
                .problems();
    }

    /** Of a list of which the last of many values alone is allowed, that run is made. */
    @Test
    void takesAListOfWhichTheLastValueAloneIsAllowed() throws InputException, IOException {
        String wrong = IntStream.rangeClosed(2, 201).mapToObj(String::valueOf).collect(Collectors.joining(", "));
        String sweep = """
                title: One that can be
                base: scenario.yaml
                vary:
                  - {name: S, key: aquifer.storativity, values: [WRONG, LAST]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                """.replace("WRONG", wrong);
        assertEquals(201, new RunList(new SweepFolder(temporary).read(sweep.replace("LAST", "2e-4"))).size());
        List<Problem> problems = problems(sweep.replace("LAST", "202"));
        assertTrue(
                problems.stream()
                        .allMatch(problem -> problem.kind() == ProblemKind.OUT_OF_RANGE
                                || problem.kind() == ProblemKind.MORE_OF_THE_SAME),
                problems::toString);
    }

    @Test
    void saysThatNothingCanBeTakenForEachOf() {
        List<Problem> problems = problems("""
                title: Nothing listed
                base: scenario.yaml
                vary:
                  - {name: T, key: aquifer.transmissivity, uniform: {from: 100 m2/d, to: 200 m2/d}}
                design: latin hypercube
                samples: 4
                for_each_of: [T, zz]
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 2 yr}
                """);
        assertEquals(
                List.of("for_each_of NOT_A_CHOICE T", "for_each_of NOT_A_CHOICE zz"),
                problems.stream().map(SweepReaderTest::words).toList(),
                problems::toString);
        assertTrue(problems.get(0).finding().allowed().contains("none here"), problems::toString);
    }
}

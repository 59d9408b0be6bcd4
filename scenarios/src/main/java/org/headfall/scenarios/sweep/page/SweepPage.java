package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.report.page.Inlined;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.Likelihood;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.statistics.Share;

/**
 * What the page of a sweep says, ready for its template.
 *
 * @param title title of the sweep
 * @param runs how many runs there are, have figures and failed, in a sentence
 * @param sentences the answer, most wanted first
 * @param tables tables with a caption and rows
 * @param charts charts
 * @param varied what varies and how runs were chosen, one sentence each
 * @param program program and version
 * @param style style sheet
 * @param script script that sorts and filters tables
 */
public record SweepPage(
        String title,
        String runs,
        List<String> sentences,
        List<Table> tables,
        List<Chart.Group> charts,
        List<String> varied,
        String program,
        Inlined style,
        Inlined script) {

    private static final String RESOURCES = "/org/headfall/scenarios/";
    private static final int BEST = 3;
    private static final int MOST_ROWS = 2_000;
    private static final double PER_CENT = 100;
    private static final int FEWEST_FOR_AN_INTERVAL = 6;

    /** Copies the lists. */
    public SweepPage {
        sentences = List.copyOf(sentences);
        tables = List.copyOf(tables);
        charts = List.copyOf(charts);
        varied = List.copyOf(varied);
    }

    /**
     * A table.
     *
     * @param id its id in the page
     * @param caption what it shows
     * @param header heads of the columns
     * @param rows cells
     */
    public record Table(String id, String caption, List<String> header, List<List<String>> rows) {
        /** Copies the lists. */
        public Table {
            header = List.copyOf(header);
            rows = List.copyOf(rows);
        }
    }

    /**
     * The page of a table of runs.
     *
     * @param table the runs
     * @param program program and version
     * @return the page
     */
    public static SweepPage of(SweepTable table, String program) {
        SweepAnswers answers = new SweepAnswers(table);
        List<Table> tables = new ArrayList<>();
        addBest(tables, table, answers);
        addLikelihoods(tables, answers);
        addSpread(tables, table, answers.isSampled());
        addInfluences(tables, table, answers);
        tables.add(runs(table, answers));
        addFailures(tables, table);
        return new SweepPage(
                table.sweep().title(),
                counts(table),
                sentences(table, answers),
                tables,
                SweepCharts.all(table, answers),
                varied(table),
                program,
                Inlined.ofResources(List.of(RESOURCES + "report/report.css", RESOURCES + "sweep/sweep.css")),
                Inlined.ofResources(List.of(RESOURCES + "sweep/sweep.js")));
    }

    /** Content-Security-Policy of the page: nothing is fetched, and nothing runs but its own script. */
    public String policy() {
        return "default-src 'none'; script-src " + script.hash() + "; style-src " + style.hash()
                + "; base-uri 'none'; form-action 'none'";
    }

    private static String counts(SweepTable table) {
        int failed =
                table.failures().values().stream().mapToInt(Integer::intValue).sum();
        int all = table.runs().size();
        return table.finished() + " of " + all + " runs have figures, " + failed + " failed, "
                + (all - table.finished() - failed) + " are not made yet.";
    }

    private static List<String> sentences(SweepTable table, SweepAnswers answers) {
        List<String> sentences = new ArrayList<>();
        for (Likelihood likelihood : answers.likelihoods()) {
            sentences.add(sentence(likelihood));
        }
        String last = "";
        for (Influence influence : answers.influences()) {
            if (!influence.figure().equals(last)) {
                last = influence.figure();
                dependence(table, influence).ifPresent(sentences::add);
            }
        }
        List<Integer> ranked = answers.ranked();
        if (!ranked.isEmpty()) {
            Aim aim = table.sweep().questions().ranking().orElseThrow();
            sentences.add(
                    0,
                    "Best by the aim asked for (" + (aim.largest() ? "largest " : "smallest ") + aim.figure()
                            + "): run " + (ranked.get(0) + 1) + " with "
                            + Numbers.words(table.figure(aim.figure())[ranked.get(0)])
                            + unit(table, aim.figure())
                            + ties(answers.sharingTheBest())
                            + " The table below says what it gives up.");
        }
        return sentences;
    }

    private static String ties(int sharing) {
        return sharing > 1
                ? ". It is the first of " + sharing
                        + " runs with that value: look at the other figures to choose among them."
                : ".";
    }

    private static String unit(SweepTable table, String figure) {
        String unit = table.sweep().figure(figure).unit();
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static Optional<String> dependence(SweepTable table, Influence influence) {
        String name = influence.figure();
        if (!Double.isNaN(influence.swing().length())) {
            return Optional.of(name + " depends most on " + influence.variable().name() + ": "
                    + Numbers.words(influence.swing().low()) + unit(table, name)
                    + (influence.variable().numeric() ? " where it is low, " : " with one of its values, ")
                    + Numbers.words(influence.swing().high()) + unit(table, name)
                    + (influence.variable().numeric()
                            ? " where it is high, in the mean."
                            : " with another, in the mean."));
        }
        return influence.total().isPresent()
                ? Optional.of(name + " depends most on " + influence.variable().name() + ": "
                        + perCent(influence.total().getAsDouble())
                        + " of its variance would be left if all else were known.")
                : Optional.empty();
    }

    private static String sentence(Likelihood likelihood) {
        String choice = likelihood.choice().isEmpty() ? "" : " with " + likelihood.choice();
        String words = likelihood.words().isEmpty() ? "" : likelihood.words() + ", ";
        return likelihood.share().of() == 0
                ? likelihood.what() + choice + ": no run says."
                : likelihood.what() + choice + ": " + words
                        + perCent(likelihood.share().value()) + " of "
                        + likelihood.share().of() + " runs"
                        + (likelihood.sampled()
                                ? " (sampling leaves "
                                        + perCent(likelihood.share().low()) + " to "
                                        + perCent(likelihood.share().high()) + ")."
                                : ".");
    }

    private static String perCent(double share) {
        return Double.isNaN(share) ? "–" : String.format(Locale.ROOT, "%.0f %%", PER_CENT * share);
    }

    private static void addBest(List<Table> tables, SweepTable table, SweepAnswers answers) {
        List<Integer> ranked = answers.ranked();
        if (!ranked.isEmpty()) {
            tables.add(table(
                    "best",
                    "The best three and what they give up",
                    table,
                    ranked.stream().limit(BEST).toList()));
        }
        List<Integer> front = answers.compromises();
        if (!front.isEmpty()) {
            tables.add(table(
                    "front",
                    "The best compromises",
                    table,
                    front.stream().limit(MOST_ROWS).toList()));
        }
    }

    private static Table runs(SweepTable table, SweepAnswers answers) {
        List<Integer> ranked = answers.ranked();
        List<Integer> places = new ArrayList<>();
        for (int place = 0; ranked.isEmpty() && place < table.runs().size(); place++) {
            if (table.isFinished(place)) {
                places.add(place);
            }
        }
        List<Integer> shown = ranked.isEmpty() ? places : ranked;
        String caption = shown.size() > MOST_ROWS
                ? "The first " + MOST_ROWS + " of " + shown.size() + " runs; sweep.csv has them all"
                : "All runs with figures";
        return table("runs", caption, table, shown.stream().limit(MOST_ROWS).toList());
    }

    private static Table table(String id, String caption, SweepTable table, List<Integer> places) {
        List<String> header = new ArrayList<>(List.of("run"));
        table.sweep().variables().forEach(variable -> header.add(variable.name()));
        table.sweep().figuresOfTables().forEach(figure -> header.add(figure.heading()));
        List<List<String>> rows = new ArrayList<>();
        for (int place : places) {
            List<String> row = new ArrayList<>(List.of(Integer.toString(place + 1)));
            for (Map.Entry<Variable, Input> input : table.runs().get(place).entrySet()) {
                row.add(input.getValue().text());
            }
            for (KeptFigure figure : table.sweep().figuresOfTables()) {
                row.add(Numbers.words(table.figure(figure.name())[place]));
            }
            rows.add(row);
        }
        return new Table(id, caption, header, rows);
    }

    private static void addLikelihoods(List<Table> tables, SweepAnswers answers) {
        List<List<String>> rows = answers.likelihoods().stream()
                .map(likelihood -> List.of(
                        likelihood.what(),
                        likelihood.choice(),
                        likelihood.words(),
                        perCent(likelihood.share().value()),
                        likelihood.sampled()
                                ? perCent(likelihood.share().low()) + " to "
                                        + perCent(likelihood.share().high())
                                : "",
                        likelihood.share().count() + " of " + likelihood.share().of()))
                .toList();
        if (!rows.isEmpty()) {
            tables.add(new Table(
                    "likelihoods",
                    "How often limits are crossed and bounds are passed",
                    List.of("what", "with", "in words", "share of runs", "95 % interval of sampling", "runs"),
                    rows));
        }
    }

    private static void addSpread(List<Table> tables, SweepTable table, boolean sampled) {
        List<List<String>> rows = new ArrayList<>();
        for (KeptFigure figure : table.sweep().figuresOfTables()) {
            double[] values = table.figure(figure.name());
            long count = Arrays.stream(values).filter(Double::isFinite).count();
            rows.add(List.of(
                    figure.heading(),
                    Numbers.words(Ranks.quantile(values, 0)),
                    Numbers.words(Ranks.quantile(values, 0.1)),
                    Numbers.words(Ranks.quantile(values, 0.5)),
                    sampled ? medianInterval(values) : "",
                    Numbers.words(Ranks.quantile(values, 0.9)),
                    Numbers.words(Ranks.quantile(values, 1)),
                    Long.toString(count)));
        }
        tables.add(new Table(
                "spread",
                "How far figures spread",
                List.of(
                        "figure",
                        "least",
                        "10 % lie below",
                        "half lie below",
                        "95 % interval of that by sampling",
                        "90 % lie below",
                        "most",
                        "runs"),
                rows));
    }

    private static void addInfluences(List<Table> tables, SweepTable table, SweepAnswers answers) {
        List<List<String>> rows = answers.influences().stream()
                .map(influence -> List.of(
                        influence.figure(),
                        influence.variable().name(),
                        Numbers.words(influence.rankCorrelation()),
                        interval(Ranks.interval(influence.rankCorrelation(), table.finished(influence.figure()))),
                        Numbers.words(influence.swing().low()),
                        Numbers.words(influence.swing().high()),
                        withError(influence.first().orElse(Double.NaN), influence.firstError()),
                        withError(influence.total().orElse(Double.NaN), influence.totalError()),
                        Integer.toString(table.finished(influence.figure()))))
                .toList();
        if (!rows.isEmpty()) {
            tables.add(new Table(
                    "influences",
                    "What figures depend on",
                    List.of(
                            "figure",
                            "variable",
                            "rank correlation",
                            "95 % interval of sampling",
                            "mean, variable in its lowest tenth (or value with the least mean)",
                            "mean, variable in its highest tenth (or value with the greatest mean)",
                            "first Sobol index ± standard error",
                            "total Sobol index ± standard error",
                            "runs"),
                    rows));
        }
    }

    /** Order statistics between which the median lies (Conover 1999, Practical nonparametric statistics, section 3.2). */
    private static String medianInterval(double[] values) {
        int count = (int) Arrays.stream(values).filter(Double::isFinite).count();
        Share half = new Share((count + 1) / 2, count);
        return count < FEWEST_FOR_AN_INTERVAL
                ? "–"
                : Numbers.words(Ranks.quantile(values, half.low())) + " to "
                        + Numbers.words(Ranks.quantile(values, half.high()));
    }

    private static String interval(double[] ends) {
        return Double.isNaN(ends[0]) ? "–" : Numbers.words(ends[0]) + " to " + Numbers.words(ends[1]);
    }

    private static String withError(double value, double error) {
        return Double.isNaN(value) ? "–" : Numbers.words(value) + " ± " + Numbers.words(error);
    }

    private static void addFailures(List<Table> tables, SweepTable table) {
        if (!table.failures().isEmpty()) {
            tables.add(new Table(
                    "failures",
                    "Runs that failed",
                    List.of("reason", "runs"),
                    table.failures().entrySet().stream()
                            .limit(MOST_ROWS)
                            .map(failure -> List.of(failure.getKey(), Integer.toString(failure.getValue())))
                            .toList()));
        }
    }

    private static List<String> varied(SweepTable table) {
        List<String> sentences = new ArrayList<>();
        for (Variable variable : table.sweep().variables()) {
            double[] numbers = table.input(variable.name());
            String keys = variable.keys().stream().map(key -> key.text()).collect(Collectors.joining(", "));
            sentences.add(
                    variable.numeric()
                            ? variable.heading() + " from " + Numbers.words(Ranks.quantile(numbers, 0)) + " to "
                                    + Numbers.words(Ranks.quantile(numbers, 1)) + " (" + keys + ")"
                            : variable.name()
                                    + (variable.variation().isDrawn() ? ", a random field" : ", one of several") + " ("
                                    + keys + ")");
        }
        sentences.add(
                table.sweep().design() instanceof Design.FullFactorial
                        ? "Every combination was run; a share of runs is no probability."
                        : "Runs are samples; the interval of a share counts sampling alone, as if samples were"
                                + " independent, not whether the distributions are right.");
        return sentences;
    }
}

package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.statistics.Share;
import org.headfall.scenarios.sweep.store.FailedRuns;

/** The tables of the page of a sweep. */
final class SweepTables {

    private static final int BEST = 3;
    private static final int MOST_ROWS = 2_000;
    private static final int FEWEST_FOR_AN_INTERVAL = 6;

    private final SweepTable table;
    private final SweepAnswers answers;

    SweepTables(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    /** The tables, in the order of the page. */
    List<SweepPage.Table> all() {
        List<SweepPage.Table> tables = new ArrayList<>();
        addBest(tables);
        addLikelihoods(tables);
        tables.add(spread());
        addInfluences(tables);
        tables.add(runs());
        addFailures(tables);
        return tables;
    }

    private void addBest(List<SweepPage.Table> tables) {
        List<Integer> ranked = answers.ranked();
        if (!ranked.isEmpty()) {
            tables.add(table(
                    "best",
                    "The best three and what they give up",
                    ranked.stream().limit(BEST).toList()));
        }
        List<Integer> front = answers.compromises();
        if (!front.isEmpty()) {
            tables.add(table(
                    "front",
                    "The best compromises",
                    front.stream().limit(MOST_ROWS).toList()));
        }
    }

    private SweepPage.Table runs() {
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
        return table("runs", caption, shown.stream().limit(MOST_ROWS).toList());
    }

    private SweepPage.Table table(String id, String caption, List<Integer> places) {
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
        return new SweepPage.Table(id, caption, header, rows);
    }

    private void addLikelihoods(List<SweepPage.Table> tables) {
        List<List<String>> rows = answers.likelihoods().stream()
                .map(likelihood -> List.of(
                        likelihood.what(),
                        likelihood.choice(),
                        likelihood.words(),
                        Numbers.perCent(likelihood.share().value()),
                        likelihood.sampled()
                                ? Numbers.perCent(likelihood.share().low()) + " to "
                                        + Numbers.perCent(likelihood.share().high())
                                : "",
                        likelihood.share().count() + " of " + likelihood.share().of()))
                .toList();
        if (!rows.isEmpty()) {
            tables.add(new SweepPage.Table(
                    "likelihoods",
                    "How often limits are crossed and bounds are passed",
                    List.of("what", "with", "in words", "share of runs", "95 % interval of sampling", "runs"),
                    rows));
        }
    }

    private SweepPage.Table spread() {
        List<List<String>> rows = new ArrayList<>();
        for (KeptFigure figure : table.sweep().figuresOfTables()) {
            double[] values = table.figure(figure.name());
            long count = Arrays.stream(values).filter(Double::isFinite).count();
            rows.add(List.of(
                    figure.heading(),
                    Numbers.words(Ranks.quantile(values, 0)),
                    Numbers.words(Ranks.quantile(values, 0.1)),
                    Numbers.words(Ranks.quantile(values, 0.5)),
                    answers.isSampled() ? medianInterval(values) : "",
                    Numbers.words(Ranks.quantile(values, 0.9)),
                    Numbers.words(Ranks.quantile(values, 1)),
                    Long.toString(count)));
        }
        return new SweepPage.Table(
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
                rows);
    }

    private void addInfluences(List<SweepPage.Table> tables) {
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
            tables.add(new SweepPage.Table(
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

    private void addFailures(List<SweepPage.Table> tables) {
        if (table.failures().count() > 0) {
            tables.add(new SweepPage.Table(
                    "failures",
                    "Runs that failed",
                    List.of("reason", "runs", "which"),
                    table.failures().byReason().entrySet().stream()
                            .limit(MOST_ROWS)
                            .map(failure -> List.of(
                                    failure.getKey(),
                                    Integer.toString(failure.getValue().size()),
                                    FailedRuns.named(failure.getValue())))
                            .toList()));
        }
    }
}

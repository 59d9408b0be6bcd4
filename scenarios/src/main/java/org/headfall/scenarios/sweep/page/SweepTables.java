package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Choices;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.statistics.Share;
import org.headfall.scenarios.sweep.statistics.Swing;
import org.headfall.scenarios.sweep.store.FailedRuns;

/** The tables of the page of a sweep. */
final class SweepTables {

    private static final int BEST = 3;
    private static final int MOST_ROWS = 2_000;
    private static final String INTERVAL = "95 % interval of sampling";
    private static final int FEWEST_FOR_AN_INTERVAL = 6;

    private final SweepTable table;
    private final SweepAnswers answers;
    private final SweepFindings findings;

    SweepTables(SweepFindings findings) {
        this.findings = findings;
        table = findings.table();
        answers = findings.answers();
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
        if (findings.choices().isPresent()) {
            tables.addAll(new ChoiceTables(table, findings.choices().get()).all());
            return;
        }
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
        List<Integer> ranked = findings.choices().isPresent() ? List.of() : answers.ranked();
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
        table.sweep().variables().forEach(variable -> header.add(variable.heading()));
        table.sweep().figuresOfTables().forEach(figure -> header.add(figure.heading()));
        List<List<String>> rows = new ArrayList<>();
        for (int place : places) {
            List<String> row = new ArrayList<>(List.of(Integer.toString(place + 1)));
            for (Map.Entry<Variable, Input> input : table.runs().get(place).entrySet()) {
                row.add(Choices.inTable(input.getKey(), input.getValue()));
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
                    List.of("what", "with", "in words", "share of runs", INTERVAL, "runs"),
                    rows));
        }
    }

    /** How far figures spread in the runs of each choice; runs of several choices together are samples of nothing. */
    private SweepPage.Table spread() {
        List<List<String>> rows = new ArrayList<>();
        for (KeptFigure figure : table.sweep().figuresOfTables()) {
            double[] values = table.figure(figure.name());
            answers.choices().forEach((choice, places) -> {
                if (rows.size() < MOST_ROWS) {
                    rows.add(spread(
                            figure.heading(),
                            choice,
                            places.stream().mapToDouble(place -> values[place]).toArray()));
                }
            });
        }
        return new SweepPage.Table(
                "spread",
                "How far figures spread",
                List.of(
                        "figure",
                        "with",
                        "least",
                        "10 % lie below",
                        "half lie below",
                        "95 % interval of that by sampling",
                        "90 % lie below",
                        "most",
                        "runs"),
                rows);
    }

    private List<String> spread(String figure, String choice, double[] values) {
        return List.of(
                figure,
                choice,
                Numbers.words(Ranks.quantile(values, 0)),
                Numbers.words(Ranks.quantile(values, 0.1)),
                Numbers.words(Ranks.quantile(values, 0.5)),
                answers.isSampled() ? medianInterval(values) : "",
                Numbers.words(Ranks.quantile(values, 0.9)),
                Numbers.words(Ranks.quantile(values, 1)),
                Long.toString(Arrays.stream(values).filter(Double::isFinite).count()));
    }

    private void addInfluences(List<SweepPage.Table> tables) {
        List<List<String>> rows = findings.influences().values().stream()
                .flatMap(List::stream)
                .map(SweepTables::row)
                .toList();
        if (!rows.isEmpty()) {
            tables.add(new SweepPage.Table(
                    "influences",
                    "What figures depend on",
                    List.of(
                            "figure",
                            "variable",
                            "what it does",
                            "rank correlation",
                            INTERVAL,
                            "mean in its lowest tenth, or least mean of its values",
                            "mean in its highest tenth, or greatest mean of its values",
                            "difference",
                            INTERVAL,
                            "first Sobol index ± standard error",
                            "total Sobol index ± standard error",
                            "samples"),
                    rows));
        }
    }

    private static List<String> row(Influence influence) {
        Influence.RankCorrelation rank = influence.rank();
        Swing swing = influence.swing();
        Influence.Indices indices = influence.indices();
        double difference = swing.high() - swing.low();
        return List.of(
                influence.figure(),
                influence.variable().name(),
                influence.words(),
                Numbers.words(rank.value()),
                interval(rank.low(), rank.high()),
                Numbers.words(swing.low()),
                Numbers.words(swing.high()),
                Numbers.words(difference),
                interval(difference - swing.error(), difference + swing.error()),
                withError(indices.first().orElse(Double.NaN), indices.firstError()),
                withError(indices.total().orElse(Double.NaN), indices.totalError()),
                Integer.toString(influence.samples()));
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

    /** A dash for one that is not known or where there is no error of sampling. */
    private static String interval(double low, double high) {
        return low < high ? Numbers.words(low) + " to " + Numbers.words(high) : "–";
    }

    private static String withError(double value, double error) {
        return Double.isNaN(value) ? "–" : Numbers.words(value) + " ± " + Numbers.error(error);
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

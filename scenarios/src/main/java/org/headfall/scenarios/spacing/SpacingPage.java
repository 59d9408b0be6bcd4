package org.headfall.scenarios.spacing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.headfall.scenarios.planning.PlanningCurves;
import org.headfall.scenarios.planning.PlanningPage;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.scenario.SpacingSpecification;

/** Layouts that were compared as a page: the answer, curves over spacing and number, tables. */
final class SpacingPage {

    /** A measure of a layout, with its name and unit. */
    private record Measure(String name, int decimals, ToDoubleFunction<SpacingResult.Line> of) {}

    private static final List<Measure> MEASURES = List.of(
            new Measure("Cost (per ML)", 2, SpacingResult.Line::cost),
            new Measure(
                    "Total yield at the given lift, equal drawdown (L/s)",
                    2,
                    line -> DischargeUnit.LITRES_PER_SECOND.of(line.yield())),
            new Measure("Yield lost to interference (%)", 1, line -> 100 * line.yieldLost()),
            new Measure("Mean lift at the given rate, equal rates (m)", 2, SpacingResult.Line::lift),
            new Measure("Lift by bores of the document (m)", 2, SpacingResult.Line::liftByDocument),
            new Measure("Interference (m)", 2, SpacingResult.Line::interference),
            new Measure("Energy (kWh/ML)", 1, SpacingResult.Line::energy),
            new Measure("Pipe (km)", 2, line -> line.pipe() / 1000),
            new Measure(
                    "Error of drawdown by a neighbour by the grid (%)",
                    2, line -> 100 * line.gridError().response()),
            new Measure(
                    "Error of mean lift by the grid (m)",
                    3,
                    line -> line.gridError().lift()));

    private SpacingPage() {}

    /**
     * The page.
     *
     * @param run the run in whose field the layouts were compared
     * @param result the layouts
     */
    static PlanningPage of(RunDescription run, SpacingResult result) {
        return new PlanningPage(
                "How far apart bores should stand",
                run.title(),
                run.provenance().toolVersion(),
                answers(run, result),
                List.of(curves(result)),
                List.of(
                        table("economic", "Spacing of least cost", "economic-spacing.csv", result.economic()),
                        table("all", "All layouts", "spacing.csv", result.lines())),
                List.of(),
                List.of());
    }

    private static List<String> answers(RunDescription run, SpacingResult result) {
        List<String> answers = new ArrayList<>();
        answers.add(question(run, result.asked()));
        result.best()
                .ifPresent(best -> answers.add(String.format(
                        Locale.ROOT,
                        "Least cost of all: %s of %d bores, %.0f m apart, %.2f per ML; lift %.1f m, pipe %.1f km.",
                        layout(best),
                        best.bores(),
                        best.spacing(),
                        best.cost(),
                        best.lift(),
                        best.pipe() / 1000)));
        result.remarkOnEnds().ifPresent(answers::add);
        answers.add(SpacingResult.WORDS_ON_RATES);
        answers.add(result.wordsOnDocument());
        answers.add(result.wordsOnGrid());
        if (!result.repeats().isEmpty()) {
            answers.add(result.repeats());
        }
        answers.add("The aquifer is taken to be alike all around the middle of the field; springs and other bores give"
                + " nothing back. Prices are those of the document, in its currency.");
        return answers;
    }

    private static String question(RunDescription run, SpacingSpecification asked) {
        return String.format(
                Locale.ROOT,
                "Asked: lift and cost for %.1f L/s in all until %s, and the total yield at a lift of %.1f m; water is lifted"
                        + " to %.1f m above the ground.",
                DischargeUnit.LITRES_PER_SECOND.of(asked.rate()),
                run.calendar().at(asked.days()).toLocalDate(),
                asked.lift(),
                asked.deliveryHead());
    }

    private static String layout(SpacingResult.Line line) {
        return line.layout().name().toLowerCase(Locale.ROOT);
    }

    private static PlanningCurves curves(SpacingResult result) {
        double[] spacings = result.lines().stream()
                .mapToDouble(SpacingResult.Line::spacing)
                .distinct()
                .sorted()
                .toArray();
        List<PlanningCurves.Curve> curves = new ArrayList<>();
        for (SpacingResult.Line best : result.economic()) {
            List<SpacingResult.Line> own = result.lines().stream()
                    .filter(line -> line.layout() == best.layout() && line.bores() == best.bores())
                    .toList();
            curves.add(new PlanningCurves.Curve(
                    layout(best),
                    best.bores(),
                    MEASURES.stream()
                            .map(measure ->
                                    own.stream().mapToDouble(measure.of()).toArray())
                            .toList(),
                    best.spacing(),
                    MEASURES.stream()
                            .mapToDouble(measure -> measure.of().applyAsDouble(best))
                            .toArray(),
                    result.isAtEnd(best)));
        }
        return new PlanningCurves(spacings, MEASURES.stream().map(Measure::name).toList(), curves);
    }

    private static PlanningTable table(String id, String caption, String file, List<SpacingResult.Line> lines) {
        List<String> header = new ArrayList<>(List.of("Layout", "Bores", "Spacing (m)"));
        MEASURES.forEach(measure -> header.add(measure.name()));
        List<List<String>> rows = new ArrayList<>();
        for (SpacingResult.Line line : lines) {
            List<String> row =
                    new ArrayList<>(List.of(layout(line), String.valueOf(line.bores()), number(line.spacing(), 0)));
            MEASURES.forEach(measure -> row.add(number(measure.of().applyAsDouble(line), measure.decimals())));
            rows.add(row);
        }
        return new PlanningTable(id, caption, file, header, rows);
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}

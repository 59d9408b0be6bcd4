package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoreCompletion;
import org.headfall.scenarios.scenario.BoreCompletion.PipeSpecification;
import org.headfall.scenarios.scenario.BoreCompletion.Screen;
import org.headfall.scenarios.scenario.BoreCompletion.WaterTemperature;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.table.TableRow;
import org.headfall.solver.bore.Pipe;
import org.headfall.solver.wording.PlainNumber;

/** Reads from the columns of a table of bores how a bore is built. */
final class CompletionColumns {
    private static final List<String> SCREEN = List.of("screen_top", "screen_bottom");
    private static final List<String> TURBULENT =
            List.of("turbulent_loss", "turbulent_loss_rate", "well_loss_exponent");
    private static final double JACOB = 2;

    private final Problems problems;

    CompletionColumns(Problems problems) {
        this.problems = problems;
    }

    BoreCompletion completion(TableRow row) {
        boolean screen = allOrNone(row, SCREEN);
        requireScreen(row, "vertical_over_horizontal", screen);
        requireScreen(row, "water_temperature", screen);
        return new BoreCompletion(
                row.valueOr("skin", 0),
                screen ? Optional.of(screen(row)) : Optional.empty(),
                pipe(row, "casing"),
                row.has("water_temperature")
                        ? Optional.of(
                                new WaterTemperature(row.value("water_temperature"), row.value("water_temperature")))
                        : Optional.empty());
    }

    private static Screen screen(TableRow row) {
        String ratio = "vertical_over_horizontal";
        return new Screen(
                row.value("screen_top"),
                row.value("screen_bottom"),
                row.has(ratio) ? Optional.of(row.value(ratio)) : Optional.empty());
    }

    /** Well loss by B and either C or the loss at one rate with another exponent, as {@link CompletionReader} reads it. */
    WellLossSpecification wellLoss(TableRow row) {
        double linear = row.valueOr("linear_well_loss", 0);
        if (!allOrNone(row, TURBULENT)) {
            return new WellLossSpecification(linear, row.valueOr("quadratic_well_loss", 0), JACOB);
        }
        if (row.has("quadratic_well_loss")) {
            String found = "quadratic_well_loss and turbulent_loss";
            report(row, "turbulent_loss", ProblemKind.CONFLICTING_KEYS, found, "one of the two");
        }
        return CompletionReader.turbulent(
                linear, row.value("turbulent_loss"), row.value("turbulent_loss_rate"), row.value("well_loss_exponent"));
    }

    /** The columns of a pipe, which are filled together or not at all. */
    static List<String> pipeColumns(String pipe) {
        return List.of(pipe + "_diameter", pipe + "_length", pipe + "_roughness");
    }

    /** A pipe, if its columns are filled. */
    Optional<PipeSpecification> pipe(TableRow row, String name) {
        List<String> columns = pipeColumns(name);
        if (!allOrNone(row, columns)) {
            return Optional.empty();
        }
        PipeSpecification pipe =
                new PipeSpecification(row.value(columns.get(0)), row.value(columns.get(1)), row.value(columns.get(2)));
        double roughest = Pipe.LARGEST_RELATIVE_ROUGHNESS * pipe.diameter();
        if (pipe.roughness() > roughest) {
            String allowed = "at most " + PlainNumber.of(roughest) + " m, a twentieth of the diameter";
            report(row, columns.get(2), ProblemKind.OUT_OF_RANGE, PlainNumber.of(pipe.roughness()) + " m", allowed);
            return Optional.empty();
        }
        return Optional.of(pipe);
    }

    /** Whether all of some columns are filled; reports rows that fill only some. */
    private boolean allOrNone(TableRow row, List<String> columns) {
        List<String> filled = new ArrayList<>(columns);
        filled.removeIf(column -> !row.has(column));
        if (filled.isEmpty() || filled.size() == columns.size()) {
            return !filled.isEmpty();
        }
        String found = "only " + String.join(", ", filled);
        report(row, filled.get(0), ProblemKind.CONFLICTING_KEYS, found, "all of " + String.join(", ", columns));
        return false;
    }

    private void requireScreen(TableRow row, String column, boolean screen) {
        if (row.has(column) && !screen) {
            report(row, column, ProblemKind.MISSING_KEY, column + " without a screen", String.join(" and ", SCREEN));
        }
    }

    private void report(TableRow row, String column, ProblemKind kind, String found, String allowed) {
        problems.add(row.place(column), "bore " + row.text("name"), Finding.of(kind, found, allowed));
    }
}

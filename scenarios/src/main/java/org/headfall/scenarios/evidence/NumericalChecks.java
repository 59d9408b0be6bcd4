package org.headfall.scenarios.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.evidence.CheckedItem.State;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.simulation.RunStatistics;

/** Items on the numbers of a run. */
final class NumericalChecks {

    /** Discrepancy allowed (-): one in a hundred, and half of it for the highest class of confidence (table 2-1). */
    private static final double BALANCE = 0.01;

    private static final double BALANCE_OF_HIGHEST_CLASS = 0.005;

    /** Change of head all over the aquifer (m) of which the water is but what solving leaves. */
    private static final double NOTHING = 1e-4;

    private final FinishedRun run;

    NumericalChecks(FinishedRun run) {
        this.run = run;
    }

    List<CheckedItem> items() {
        return List.of(balance(), convergence(), errorBudget(), farBoundary(), confinement(), interference());
    }

    private CheckedItem balance() {
        String item = "Water is accounted for, in each period and step";
        String source = ReviewChecklist.GUIDELINES + ", table 2-1";
        Optional<WaterBalance> worst =
                run.recording().balances().stream().max(Comparator.comparingDouble(WaterBalance::relativeDiscrepancy));
        if (worst.isEmpty()) {
            return new CheckedItem(item, source, State.NOT_SHOWN, "The run holds no water balance.");
        }
        if (allThatPassed() < NOTHING * storedPerMetre()) {
            return new CheckedItem(
                    item, source, State.SHOWN, "Nothing flows that could be told from what solving leaves.");
        }
        double step = run.figures().solver().largestBalanceDiscrepancy();
        double largest = Math.max(step, worst.get().relativeDiscrepancy());
        return new CheckedItem(
                item,
                source,
                largest < BALANCE ? State.SHOWN : State.NOT_MET,
                String.format(
                        Locale.ROOT,
                        "At most %.1e %% of what passed in the period to %s, %.1e %% in a step: %s.",
                        100 * worst.get().relativeDiscrepancy(),
                        date(worst.get().toDay()),
                        100 * step,
                        mark(largest)));
    }

    private static String mark(double discrepancy) {
        if (discrepancy < BALANCE_OF_HIGHEST_CLASS) {
            return "below 0.5 %, the mark of the highest class";
        }
        return discrepancy < BALANCE ? "below 1 %" : "not below 1 %";
    }

    private double allThatPassed() {
        return run.recording().balances().stream()
                .mapToDouble(WaterBalance::inflow)
                .sum();
    }

    /** Water that the aquifer gives if head falls by a metre everywhere (m²; times metres, m³). */
    private double storedPerMetre() {
        Aquifer aquifer = run.description().aquifer();
        double volume = 0;
        for (int cell = 0; cell < aquifer.storativity().length; cell++) {
            volume += aquifer.active()[cell]
                    ? aquifer.storativity()[cell] * aquifer.grid().area(cell)
                    : 0;
        }
        return volume;
    }

    private String date(double day) {
        return run.description().calendar().at(day).toLocalDate().toString();
    }

    /** An equation that is neither solved to its rule nor as far as rounding allows stops the run, so a finished run proves it. */
    private CheckedItem convergence() {
        RunStatistics solver = run.figures().solver();
        return new CheckedItem(
                "Every step converged",
                ReviewChecklist.GUIDELINES + ", chapter 4",
                State.SHOWN,
                String.format(
                        Locale.ROOT,
                        "%d steps taken, %d taken again shorter; largest error estimate of a step %.1e m. %d linear systems,"
                                + " each solved to its tolerance or as far as rounding of double precision allows, in %d"
                                + " iterations; one that is not stops the run. Heads were found %s.",
                        solver.steps(),
                        solver.rejectedSteps(),
                        solver.largestStepError(),
                        solver.linearSolves(),
                        solver.linearIterations(),
                        run.figures().solvedBy().map(SolvedBy::words).orElse("by steps through time")));
    }

    private Optional<ErrorBudget.Line> worstLine() {
        return run.figures()
                .errorBudget()
                .flatMap(budget -> budget.lines().stream().max(Comparator.comparingDouble(ErrorBudget.Line::together)));
    }

    private CheckedItem errorBudget() {
        return new CheckedItem(
                "The error of grid and time steps is known",
                ReviewChecklist.GUIDELINES + ", chapter 4",
                worstLine().isPresent() ? State.SHOWN : State.NOT_SHOWN,
                worstLine()
                        .map(line -> String.format(
                                Locale.ROOT,
                                "At most %.3f m, at %s on %s: %.3f m by time steps, %.3f m by the grid; doubts.csv.",
                                line.together(),
                                line.station(),
                                date(line.day()),
                                line.time(),
                                line.grid().orElse(0)))
                        .orElse("Only the error of the time steps was found; run with --doubts."));
    }

    private CheckedItem farBoundary() {
        String item = "Boundaries do not decide the answer";
        String source = "ASTM D5609; at most a tenth of the largest loss of head: common practice, no source";
        Optional<ErrorBudget.Line> worst = run.figures()
                .errorBudget()
                .flatMap(budget -> budget.lines().stream()
                        .filter(line -> line.boundary().isPresent())
                        .max(Comparator.comparingDouble(line -> line.boundary().getAsDouble())));
        if (worst.isEmpty()) {
            return new CheckedItem(
                    item,
                    source,
                    State.NOT_SHOWN,
                    "No far boundary was moved: run with --doubts where there is one, or run again on a larger grid.");
        }
        ErrorBudget.Line line = worst.get();
        double change = line.boundary().getAsDouble();
        LossOfHead loss = LossOfHead.of(run);
        return new CheckedItem(
                item,
                source,
                loss.outweighs(change) ? State.SHOWN : State.NOT_MET,
                String.format(
                        Locale.ROOT,
                        "With far heads half as far again from the grid, head changes by at most %.3f m, at %s on %s; the"
                                + " largest loss of head is %.3f m. It counts in the numerical error of each limit.",
                        change,
                        line.station(),
                        date(line.day()),
                        loss.largest()));
    }

    private CheckedItem confinement() {
        Confinement confinement = run.findings().confinement();
        boolean everywhere = confinement.everywhere();
        return new CheckedItem(
                "The aquifer stays full",
                "a condition of the equation solved (Theis 1935)",
                everywhere ? State.SHOWN : State.NOT_MET,
                everywhere
                        ? "Head stays above the top of the aquifer in all cells and at all bores."
                        : String.format(
                                Locale.ROOT,
                                "Head falls below the top of the aquifer in %d cells (%.1f km\u00b2)%s.",
                                confinement.cells(),
                                confinement.area() / 1e6,
                                confinement.stations().isEmpty()
                                        ? ""
                                        : " and at "
                                                + confinement.stations().get(0).station()
                                                + " from "
                                                + date(confinement
                                                        .stations()
                                                        .get(0)
                                                        .sinceDay())));
    }

    /** A large remainder is no mistake by itself, for changing boundaries have their part in it: people have to judge. */
    private CheckedItem interference() {
        String item = "The parts of drawdown by cause add up";
        String source =
                "superposition (Theis 1935); at most a tenth of the largest loss of head: common practice, no source";
        if (run.findings().interference().isEmpty()) {
            return new CheckedItem(item, source, State.NOT_SHOWN, "The run holds no split by cause.");
        }
        List<InterferenceTable> tables = run.findings().interference();
        InterferenceTable last = tables.get(tables.size() - 1);
        int worst = 0;
        for (int i = 1; i < last.remainder().length; i++) {
            worst = Math.abs(last.remainder()[i]) > Math.abs(last.remainder()[worst]) ? i : worst;
        }
        return new CheckedItem(
                item,
                source,
                LossOfHead.of(run).outweighs(last.remainder()[worst]) ? State.SHOWN : State.OPEN,
                String.format(
                        Locale.ROOT,
                        "Largest difference to the full run %+.3f m, at %s on %s; what boundaries, recharge and drift do is in"
                                + " it.",
                        last.remainder()[worst],
                        last.stations().get(worst),
                        date(last.day())));
    }
}

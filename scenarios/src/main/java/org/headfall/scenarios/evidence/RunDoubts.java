package org.headfall.scenarios.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.results.FinishedRun;

/** What makes the figures of a finished run less sure. */
final class RunDoubts {

    private final FinishedRun run;

    private RunDoubts(FinishedRun run) {
        this.run = run;
    }

    static List<Doubt> of(FinishedRun run) {
        return new RunDoubts(run).doubts();
    }

    private List<Doubt> doubts() {
        List<Doubt> doubts = new ArrayList<>();
        Confinement confinement = run.findings().confinement();
        if (confinement.cells() > 0) {
            doubts.add(new Doubt(
                    "",
                    String.format(
                            Locale.ROOT,
                            "Head falls below the top of the aquifer in %s (%.1f km\u00b2). The aquifer drains there"
                                    + " and figures that depend on these cells are not reliable.",
                            confinement.cells() == 1 ? "one cell" : confinement.cells() + " cells",
                            confinement.area() / 1e6)));
        }
        for (Confinement.StationBelowTop station : confinement.stations()) {
            doubts.add(new Doubt(
                    station.station(),
                    String.format(
                            Locale.ROOT,
                            "head falls up to %.2f m below the top of the aquifer, first on %s.",
                            station.lowest(),
                            run.description().calendar().at(station.sinceDay()).toLocalDate())));
        }
        doubts.addAll(UnmetRates.of(run));
        doubts.addAll(NeverFlowing.of(run));
        run.description().assumptions().forEach(sentence -> doubts.add(new Doubt("", sentence)));
        run.figures().drift().ifPresent(drift -> doubts.add(new Doubt("Drift", sentence(drift))));
        if (run.figures().errorBudget().isEmpty()) {
            doubts.add(new Doubt(
                    "Numerical error",
                    "only the part of the time steps is known. What the grid and far boundaries add was not"
                            + " determined; a run with --doubts finds it."));
        }
        run.figures()
                .errorBudget()
                .flatMap(budget -> budget.lines().stream().max(Comparator.comparingDouble(ErrorBudget.Line::together)))
                .ifPresent(line -> doubts.add(new Doubt("Numerical error", sentence(line))));
        doubts.add(new Doubt(
                "Data",
                "the error of the measurements and tests that the scenario rests on is in no figure of this report."));
        return doubts;
    }

    private String sentence(Drift drift) {
        return String.format(
                Locale.ROOT,
                "If nothing changed after the start, head would still move: by %+.3f m at %s by %s, and less at all"
                        + " other places. This is in every figure that is counted since the start.",
                drift.change(),
                drift.station(),
                run.description().calendar().at(drift.day()).toLocalDate());
    }

    private String sentence(ErrorBudget.Line line) {
        return String.format(
                Locale.ROOT,
                "at most %.2f m of head, at %s on %s: %.3f m by time steps, %.3f m by the grid, %.3f m by the place of far"
                        + " boundaries.",
                line.together(),
                line.station(),
                run.description().calendar().at(line.day()).toLocalDate(),
                line.time(),
                line.grid().orElse(0),
                line.boundary().orElse(0));
    }
}

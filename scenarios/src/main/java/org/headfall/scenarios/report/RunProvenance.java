package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.report.content.Provenance;
import org.headfall.scenarios.report.content.Provenance.Fact;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;

/** Where a finished run came from and what it took. */
final class RunProvenance {

    private static final double BYTES_PER_MEBIBYTE = 1 << 20;

    private RunProvenance() {}

    static Provenance of(FinishedRun run) {
        var source = run.description().provenance();
        String document =
                source.inputs().isEmpty() ? "SCENARIO" : source.inputs().get(0).path();
        return new Provenance(
                source.toolVersion().replaceFirst("^Headfall ", ""),
                "sh cli/headfall run " + document + (run.figures().errorBudget().isPresent() ? " --doubts" : ""),
                source.inputs().stream()
                        .map(file -> new Provenance.InputFile(file.path(), file.sha256()))
                        .toList(),
                facts(run.figures()));
    }

    private static List<Fact> facts(RunFigures figures) {
        var solver = figures.solver();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Cells", Integer.toString(solver.cells())));
        figures.solvedBy().ifPresent(solvedBy -> facts.add(new Fact("Heads found", solvedBy.words())));
        facts.addAll(List.of(
                new Fact("Time steps", solver.steps() + ", and " + solver.rejectedSteps() + " taken again"),
                new Fact(
                        "Linear systems solved",
                        solver.linearSolves() + ", in " + solver.linearIterations() + " iterations"),
                new Fact(
                        "Largest error estimate of a step",
                        String.format(Locale.ROOT, "%.2e m", solver.largestStepError())),
                new Fact(
                        "Largest discrepancy of a step's water balance",
                        String.format(Locale.ROOT, "%.1e of what passed", solver.largestBalanceDiscrepancy())),
                new Fact("Time taken", String.format(Locale.ROOT, "%.0f s", figures.secondsInAll())),
                new Fact("Memory", String.format(Locale.ROOT, "%.0f MiB", figures.peakMemory() / BYTES_PER_MEBIBYTE)),
                new Fact("Processors", Integer.toString(figures.processors()))));
        return facts;
    }
}

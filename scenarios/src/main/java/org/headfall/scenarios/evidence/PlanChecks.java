package org.headfall.scenarios.evidence;

import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.evidence.CheckedItem.State;
import org.headfall.scenarios.recording.InputFile;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.grid.RectilinearGrid;

/** Items on what was asked and how it was set up. */
final class PlanChecks {

    private final FinishedRun run;
    private final RunDescription description;

    PlanChecks(FinishedRun run) {
        this.run = run;
        description = run.description();
    }

    List<CheckedItem> items() {
        return List.of(purpose(), archive(), limits(), start(), bores(), late());
    }

    private CheckedItem purpose() {
        boolean stated = !description.purpose().isBlank();
        return new CheckedItem(
                "The purpose is stated",
                ReviewChecklist.GUIDELINES + ", chapter 2; ASTM D5718",
                stated ? State.SHOWN : State.NOT_SHOWN,
                stated ? description.purpose() : "The scenario document has no description.");
    }

    private CheckedItem archive() {
        List<InputFile> inputs = description.provenance().inputs();
        boolean all = !inputs.isEmpty()
                && inputs.stream().noneMatch(file -> file.path().startsWith(".."));
        return new CheckedItem(
                "A stranger can run it again",
                "ASTM D5718",
                all ? State.SHOWN : State.NOT_SHOWN,
                all
                        ? inputs.size() + " input files with their SHA-256, made by "
                                + description.provenance().toolVersion()
                                + "; headfall rerun proves the numbers from inputs.zip."
                        : "Files outside the folder of the document are not kept with the results.");
    }

    private CheckedItem limits() {
        return new CheckedItem(
                "What may not happen is said beforehand, as numbers",
                "common practice, no source",
                run.limits().isEmpty() ? State.NOT_SHOWN : State.SHOWN,
                run.limits().isEmpty()
                        ? "The scenario sets no limits."
                        : run.limits().size() + " limits and places, each with value, margin and numerical error.");
    }

    /** Only a start from given heads is tested without being asked: others are found as states at rest. */
    private CheckedItem start() {
        boolean small = run.figures()
                .drift()
                .map(drift -> LossOfHead.of(run).outweighs(drift.change()))
                .orElse(true);
        return new CheckedItem(
                "The start does not drift by itself",
                "ASTM D5610; at most a tenth of the largest loss of head: common practice, no source",
                small ? State.SHOWN : State.NOT_MET,
                run.figures()
                        .drift()
                        .map(drift -> String.format(
                                Locale.ROOT,
                                "Kept as at the start, head moves by %+.3f m at %s by %s, less elsewhere; the largest loss"
                                        + " of head is %.3f m. Take the drift off what is counted since the start.",
                                drift.change(),
                                drift.station(),
                                description.calendar().at(drift.day()).toLocalDate(),
                                LossOfHead.of(run).largest()))
                        .orElse("The start is a steady state of the same equations, found before the run."));
    }

    private CheckedItem bores() {
        List<String> beside = description.bores().stream()
                .filter(this::isBesideTheRim)
                .map(Station::name)
                .toList();
        return new CheckedItem(
                "No bore stands at the rim of the aquifer",
                "image wells, Ferris and others 1962",
                beside.isEmpty() ? State.SHOWN : State.NOT_MET,
                beside.isEmpty()
                        ? "All " + description.bores().size()
                                + " bores have cells of the aquifer on all sides of theirs."
                        : "In a cell of the rim: " + String.join(", ", beside) + ".");
    }

    private boolean isBesideTheRim(Station.BoreSite bore) {
        RectilinearGrid grid = description.grid();
        boolean[] active = description.aquifer().active();
        int cell = grid.locate(bore.x(), bore.y());
        int column = grid.column(cell);
        int row = grid.row(cell);
        return column == 0
                || column + 1 == grid.columns()
                || row == 0
                || row + 1 == grid.rows()
                || !active[cell - 1]
                || !active[cell + 1]
                || !active[cell - grid.columns()]
                || !active[cell + grid.columns()];
    }

    private CheckedItem late() {
        var recoveries = run.findings().recovery().lines();
        return new CheckedItem(
                "Effects that come after taking has stopped are looked at",
                "practice of Bioregional Assessments: largest change and its year",
                recoveries.isEmpty() ? State.NOT_SHOWN : State.SHOWN,
                recoveries.stream()
                        .filter(recovery -> recovery.isCertain() && !recovery.hasPassed())
                        .findFirst()
                        .map(recovery -> String.format(
                                Locale.ROOT,
                                "Drawdown at %s by %s still grows after %.0f years.",
                                recovery.station(),
                                recovery.taking(),
                                (recovery.lastDay() - recovery.stopDay()) / RunCalendar.DAYS_PER_YEAR))
                        .orElse(
                                recoveries.isEmpty()
                                        ? "The run has no recovery."
                                        : "recovery.csv; the largest drawdown has passed at all places where it is more"
                                                + " than the numerical error."));
    }
}

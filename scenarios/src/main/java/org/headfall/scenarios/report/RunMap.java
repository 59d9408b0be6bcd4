package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.aquifer.Aquifer;

/** The map of a finished run: heads at every date for which there are grids. */
final class RunMap {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final FinishedRun run;
    private final List<Heads> grids;

    /**
     * Heads of the whole grid, in single precision, which halves the memory of a map with many dates.
     *
     * @param day days since the start
     * @param head head of each cell (m above datum), NaN where there is no aquifer
     */
    @SuppressWarnings("ArrayRecordComponent") // large, handed on and never compared
    record Heads(double day, float[] head) {

        static Heads of(HeadGrid grid) {
            return new Heads(grid.day(), single(grid.head()));
        }
    }

    /**
     * Map of a run.
     *
     * @param run the run
     * @param grids heads of the whole grid in order of time, the start first
     */
    RunMap(FinishedRun run, List<Heads> grids) {
        this.run = run;
        this.grids = List.copyOf(grids);
    }

    /** Days of the map (d since the start). */
    List<Double> days() {
        return grids.stream().map(Heads::day).toList();
    }

    FieldMap fieldMap() {
        Aquifer aquifer = run.description().aquifer();
        List<DatedField> heads = grids.stream()
                .map(grid -> new DatedField(date(grid.day()), grid.head()))
                .toList();
        return new FieldMap(
                aquifer.grid().x().centres(),
                aquifer.grid().y().centres(),
                single(run.description().ground()),
                single(aquifer.top()),
                single(aquifer.bottom()),
                heads,
                List.of(),
                "since " + DAY.format(date(run.recording().startDay())));
    }

    private LocalDate date(double day) {
        return run.description().calendar().at(day).toLocalDate();
    }

    private static float[] single(double[] values) {
        float[] copy = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            copy[i] = (float) values[i];
        }
        return copy;
    }
}

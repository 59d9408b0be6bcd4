package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.schedule.Schedule;

/**
 * Heads at the receptors as they would be without any bore and spring: those of the start, moved by boundaries and
 * recharge that change and by what was not at rest then. Immutable.
 */
public final class UndisturbedHeads {

    private final double[] atStart;
    private final List<ChangingSource> sources;
    private final ResponseTable rises;
    private final double[][] days;
    private final double[][] jumps;
    private final double[][] bends;

    /**
     * Heads that are known already, as those of a file.
     *
     * @param atStart head of each receptor at the start (m above datum)
     * @param sources what moves them
     * @param rises rise of head by a unit inflow of each source (d/m²): the causes are the sources
     * @param horizon last day of the responses (d)
     */
    public UndisturbedHeads(double[] atStart, List<ChangingSource> sources, ResponseTable rises, double horizon) {
        this.atStart = atStart.clone();
        this.sources = List.copyOf(sources);
        this.rises = rises;
        days = new double[sources.size()][];
        jumps = new double[sources.size()][];
        bends = new double[sources.size()][];
        for (int i = 0; i < sources.size(); i++) {
            follow(i, sources.get(i), horizon);
        }
    }

    /** Takes the change of a source apart into jumps and bends. */
    private void follow(int i, ChangingSource source, double horizon) {
        double[] changes = source.changes(horizon);
        days[i] = changes;
        jumps[i] = new double[changes.length];
        bends[i] = new double[changes.length];
        double value = 0;
        double growth = 0;
        for (int k = 0; k < changes.length; k++) {
            double end = k + 1 < changes.length ? changes[k + 1] : horizon;
            double first = source.change(changes[k]);
            double last = source.change(Math.nextDown(end));
            jumps[i][k] = first - value;
            bends[i][k] = (last - first) / (end - changes[k]) - growth;
            growth += bends[i][k];
            value = last;
        }
    }

    /** Heads at the start (m above datum), a copy. */
    public double[] atStart() {
        return atStart.clone();
    }

    /** What moves them. */
    public List<ChangingSource> sources() {
        return sources;
    }

    /** Days after the start and before another on which what moves heads jumps, in increasing order. */
    double[] jumps(double before) {
        return days(before, Schedule::jumps);
    }

    /** Days after the start and before another on which what moves heads changes its slope alone, in increasing order. */
    double[] bends(double before) {
        return days(before, Schedule::bends);
    }

    private double[] days(double before, Function<Schedule, double[]> kind) {
        return sources.stream()
                .map(ChangingSource::schedule)
                .flatMapToDouble(schedule -> DoubleStream.of(kind.apply(schedule)))
                .filter(day -> day > 0 && day < before)
                .sorted()
                .distinct()
                .toArray();
    }

    /** Rise of head by a unit inflow of each source (d/m²). */
    public ResponseTable rises() {
        return rises;
    }

    /**
     * Heads on a day.
     *
     * @param day the day (d), within the run
     * @return head of each receptor (m above datum)
     */
    public double[] on(double day) {
        return on(day, IntStream.range(0, atStart.length).toArray());
    }

    /**
     * Heads at some receptors on a day.
     *
     * @param day the day (d), within the run
     * @param receptors the receptors
     * @return head of each of them (m above datum), each what {@link #on(double)} gives
     */
    double[] on(double day, int[] receptors) {
        double[] head = new double[receptors.length];
        Arrays.setAll(head, i -> atStart[receptors[i]]);
        double[] amounts = new double[sources.size()];
        for (int i = 0; i < amounts.length; i++) {
            for (int k = 0; k < days[i].length && days[i][k] < day; k++) {
                double time = day - days[i][k];
                amounts[i] = jumps[i][k];
                rises.addSteps(time, amounts, receptors, head);
                amounts[i] = bends[i][k];
                rises.addRamps(time, amounts, receptors, head);
            }
            amounts[i] = 0;
        }
        return head;
    }
}

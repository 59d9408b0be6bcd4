package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.solver.flow.FlowProblem;

/**
 * Days on which steps of a superposed run end, whatever their length: those to record, those on which a rate, an operation
 * or what else moves heads jumps or bends, and the end. Between them all that is given runs straight.
 *
 * @param all these days, increasing
 * @param jumps the days of them after which discharges may be others at once
 * @param bends the days of them on which what is given may change its slope
 */
@SuppressWarnings("ArrayRecordComponent") // read by one run, never compared
record StopDays(double[] all, double[] jumps, double[] bends) {

    /**
     * Days of a stretch of time.
     *
     * @param problem the problem with its rates, operations and springs
     * @param undisturbed heads without them
     * @param recordDays days to record
     * @param from begin of the stretch (d), no stop itself
     * @param to its end (d)
     */
    static StopDays of(FlowProblem problem, UndisturbedHeads undisturbed, double[] recordDays, double from, double to) {
        double[] jumps = merged(problem.jumps(from, to), undisturbed.jumps(to));
        double[] bends = merged(problem.bends(from, to), undisturbed.bends(to));
        double[] within = Arrays.stream(merged(recordDays, jumps, bends))
                .filter(day -> day > from && day < to)
                .toArray();
        return new StopDays(merged(within, new double[] {to}), jumps, bends);
    }

    /** All these days, each once, in increasing order. */
    private static double[] merged(double[]... some) {
        return Stream.of(some)
                .flatMapToDouble(DoubleStream::of)
                .sorted()
                .distinct()
                .toArray();
    }

    /** Whether discharges may jump on a day. */
    boolean jumpsOn(double day) {
        return Arrays.binarySearch(jumps, day) >= 0;
    }

    /** Whether what is given may bend on a day. */
    boolean bendsOn(double day) {
        return Arrays.binarySearch(bends, day) >= 0;
    }
}

package org.headfall.scenarios.recording;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.flow.RateHistory;

/**
 * Discharges of all bores and springs of a run as straight pieces: what superposition needs, without every time step.
 * Piece k lasts from {@code days[k]} to {@code days[k + 1]}; a discharge may jump between two pieces. Arrays are not
 * copied and must not change.
 *
 * @param days ends of the pieces (d since the start), increasing, one more than there are pieces
 * @param begin discharge where a piece begins (m³/d): {@code [point][piece]}, bores first, then springs
 * @param end discharge where a piece ends (m³/d), in the same order
 */
@SuppressWarnings("ArrayRecordComponent") // series shared by all analyses, never compared
public record DischargeHistory(double[] days, double[][] begin, double[][] end) {

    /** Checks that every point has a value for each piece. */
    public DischargeHistory {
        for (double[][] values : new double[][][] {begin, end}) {
            for (double[] row : values) {
                if (row.length != days.length - 1) {
                    throw new IllegalArgumentException(
                            row.length + " discharges do not fit " + (days.length - 1) + " pieces of time");
                }
            }
        }
    }

    /**
     * Straight pieces between the recorded days, with a piece of its own for the short step after each jump, in which
     * superposition takes discharges for constant.
     *
     * @param history discharges of every time step of the run
     * @param recordedDays days that were recorded
     * @param startRates discharge of each point in the state that the run started from (m³/d)
     * @return the pieces
     */
    public static DischargeHistory of(RateHistory history, double[] recordedDays, double[] startRates) {
        int[] ends = IntStream.range(0, history.steps())
                .filter(step -> isKept(history, step, recordedDays))
                .toArray();
        double[] days = new double[ends.length + 1];
        days[0] = history.startOf(0);
        double[][] begin = new double[history.points()][ends.length];
        double[][] end = new double[history.points()][ends.length];
        for (int piece = 0; piece < ends.length; piece++) {
            days[piece + 1] = history.startOf(ends[piece] + 1);
            for (int point = 0; point < history.points(); point++) {
                end[point][piece] = history.straightenedRateAtEnd(ends[piece], point);
                double former = piece == 0 ? startRates[point] : end[point][piece - 1];
                begin[point][piece] = history.startsAnew(ends[piece]) ? end[point][piece] : former;
            }
        }
        return new DischargeHistory(days, begin, end);
    }

    /** A piece ends on every recorded day, before every jump and after the step that follows a jump. */
    private static boolean isKept(RateHistory history, int step, double[] recordedDays) {
        boolean last = step + 1 == history.steps();
        return last
                || history.startsAnew(step)
                || history.startsAnew(step + 1)
                || Arrays.binarySearch(recordedDays, history.startOf(step + 1)) >= 0;
    }

    /** Number of bores and springs. */
    public int points() {
        return begin.length;
    }

    /** Number of pieces. */
    public int pieces() {
        return days.length - 1;
    }
}

package org.headfall.scenarios.siting;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * How much more a place that gives less as head falls loses of its discharge than by a straight rule, over the fall that head
 * there would have by that rule. Where head falls by s, a rule loses q(s), and the straight rule with the slope b loses {@code
 * s / b}; the excess {@code e = q(s) - s / b} raises head there by its own response R, the straight rule counted, times as much. So
 * the straight fall is {@code u = s + R e}, which grows with s: a table of both gives e over u. Immutable.
 */
final class Bend {

    /** A straight rule. */
    static final Bend NONE = new Bend(new double[] {0, 1}, new double[2]);

    private static final int POINTS = 64;
    private static final double FIRST_FALL = 1e-3;
    private static final double LARGEST_FALL = 1e5;
    private static final double SAME = 1e-9;

    private final double[] straightFalls;
    private final double[] excesses;

    private Bend(double[] straightFalls, double[] excesses) {
        this.straightFalls = straightFalls;
        this.excesses = excesses;
    }

    /**
     * Bend of a rule.
     *
     * @param lost discharge that the place loses where head at its wall falls by so much (m³/d by m), not falling
     * @param tangent slope of the straight rule (d/m²), positive
     * @param own fall of head at the place by its own unit discharge, the straight rule counted (d/m²), less than the tangent
     */
    static Bend of(DoubleUnaryOperator lost, double tangent, double own) {
        double stop = fallThatStops(lost);
        double[] straight = new double[POINTS + 2];
        double[] excess = new double[POINTS + 2];
        for (int i = 0; i < straight.length; i++) {
            double toGo = 1 - (double) i / POINTS;
            // Closer together where it stops, for there discharge may go as the root of head; straight on beyond.
            double fall = i <= POINTS ? stop * (1 - toGo * toGo) : 2 * stop;
            excess[i] = i == 0 ? 0 : lost.applyAsDouble(fall) - fall / tangent;
            straight[i] = fall + own * excess[i];
        }
        return new Bend(straight, excess);
    }

    /** The least fall after which nothing more is lost (m). */
    private static double fallThatStops(DoubleUnaryOperator lost) {
        double high = FIRST_FALL;
        while (high < LARGEST_FALL && lost.applyAsDouble(2 * high) > lost.applyAsDouble(high) * (1 + SAME)) {
            high *= 2;
        }
        double all = lost.applyAsDouble(high);
        double low = 0;
        while (high - low > SAME * high) {
            double middle = 0.5 * (low + high);
            if (lost.applyAsDouble(middle) < all * (1 - SAME)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Excess of the lost discharge (m³/d) where head would fall so far by the straight rule (m); none where it rises. */
    double excess(double straightFall) {
        if (straightFall <= 0) {
            return 0;
        }
        int found = Arrays.binarySearch(straightFalls, straightFall);
        int after = found >= 0 ? found : -found - 1;
        int i = Math.max(1, Math.min(after, straightFalls.length - 1));
        double share = (straightFall - straightFalls[i - 1]) / (straightFalls[i] - straightFalls[i - 1]);
        return excesses[i - 1] + share * (excesses[i] - excesses[i - 1]);
    }

    /** Whether it is straight over any fall. */
    boolean isStraight() {
        return IntStream.range(0, excesses.length).allMatch(i -> excesses[i] == 0);
    }
}

package org.headfall.solver.bore;

import java.util.Arrays;
import org.headfall.solver.wording.PlainNumber;

/**
 * Head that a pump adds, by its discharge: points joined by cubics with the slopes of parabolas through three points, held to
 * three times the flatter chord beside each point (Hyman 1983, SIAM J. Sci. Stat. Comput. 4, 645-654), so that the curve
 * never rises where the points fall (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238-246). Immutable.
 */
public final class PumpCurve {

    /** Fewest points that describe a curve. */
    public static final int FEWEST_POINTS = 3;

    private final double[] flows;
    private final double[] heads;
    private final double[] slopes;

    /**
     * A curve.
     *
     * @param flows discharges (m³/d), strictly increasing from 0, at least three
     * @param heads head added at each (m), falling or level
     * @throws IllegalArgumentException if there are too few points, the flows do not increase from 0 or the heads rise; the
     *     message gives the point and its value
     */
    public PumpCurve(double[] flows, double[] heads) {
        if (flows.length != heads.length || flows.length < FEWEST_POINTS) {
            throw new IllegalArgumentException("a pump curve needs at least " + FEWEST_POINTS
                    + " points of flow and head, found " + flows.length + " and " + heads.length);
        }
        if (flows[0] != 0) {
            throw new IllegalArgumentException(
                    "a pump curve must begin at no flow, found " + PlainNumber.of(flows[0]) + " m3/d in point 1");
        }
        for (int i = 0; i < flows.length; i++) {
            if (!Double.isFinite(flows[i]) || !Double.isFinite(heads[i]) || (i > 0 && flows[i] <= flows[i - 1])) {
                throw new IllegalArgumentException("the flows of a pump curve must increase and its heads be finite,"
                        + " found " + PlainNumber.of(flows[i]) + " m3/d and " + PlainNumber.of(heads[i])
                        + " m in point " + (i + 1));
            }
            if (i > 0 && heads[i] > heads[i - 1]) {
                throw new IllegalArgumentException("a pump curve must not rise, found " + PlainNumber.of(heads[i])
                        + " m after " + PlainNumber.of(heads[i - 1]) + " m in point " + (i + 1));
            }
        }
        this.flows = flows.clone();
        this.heads = heads.clone();
        slopes = slopes(flows, heads);
    }

    private static double[] slopes(double[] flows, double[] heads) {
        int last = flows.length - 1;
        double[] slopes = new double[last + 1];
        for (int i = 0; i <= last; i++) {
            int middle = Math.max(1, Math.min(last - 1, i));
            double before = chord(flows, heads, middle - 1);
            double after = chord(flows, heads, middle);
            double bend = (after - before) / (flows[middle + 1] - flows[middle - 1]);
            double parabola = before + bend * (2 * flows[i] - flows[middle] - flows[middle - 1]);
            double flattest =
                    Math.max(chord(flows, heads, Math.max(0, i - 1)), chord(flows, heads, Math.min(last - 1, i)));
            slopes[i] = Math.max(3 * flattest, Math.min(0, parabola));
        }
        return slopes;
    }

    private static double chord(double[] flows, double[] heads, int i) {
        return (heads[i + 1] - heads[i]) / (flows[i + 1] - flows[i]);
    }

    /** Largest discharge of the curve (m³/d): the pump gives no more. */
    public double largestFlow() {
        return flows[flows.length - 1];
    }

    /**
     * Head added.
     *
     * @param flow discharge (m³/d), from 0 to the largest
     * @return head (m)
     */
    public double head(double flow) {
        int i = interval(flow);
        double width = flows[i + 1] - flows[i];
        double s = (flow - flows[i]) / width;
        return heads[i]
                + (heads[i + 1] - heads[i]) * s * s * (3 - 2 * s)
                + width * s * (1 - s) * (slopes[i] * (1 - s) - slopes[i + 1] * s);
    }

    /**
     * Change of the head with discharge.
     *
     * @param flow discharge (m³/d), from 0 to the largest
     * @return slope (d/m²), not positive
     */
    public double slope(double flow) {
        int i = interval(flow);
        double width = flows[i + 1] - flows[i];
        double s = (flow - flows[i]) / width;
        double slope = (heads[i + 1] - heads[i]) / width * 6 * s * (1 - s)
                + slopes[i] * (1 - s) * (1 - 3 * s)
                + slopes[i + 1] * s * (3 * s - 2);
        // Rounding may turn a level stretch up by a hair.
        return Math.min(0, slope);
    }

    private int interval(double flow) {
        if (!(flow >= 0 && flow <= largestFlow())) {
            throw new IllegalArgumentException("the pump curve ends at " + PlainNumber.of(largestFlow())
                    + " m3/d, asked for " + PlainNumber.of(flow));
        }
        int found = Arrays.binarySearch(flows, flow);
        return Math.min(flows.length - 2, found >= 0 ? found : -found - 2);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PumpCurve curve
                && Arrays.equals(flows, curve.flows)
                && Arrays.equals(heads, curve.heads);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(flows) + Arrays.hashCode(heads);
    }
}

package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.apache.commons.math3.util.FastMath;

/** Statistics that only the order of values counts for. */
public final class Ranks {

    private static final int LEAST = 3;

    private static final double ROUNDING = 1e-12;

    private static final double NEARLY_ONE = 1 - 1e-12;

    private Ranks() {}

    /**
     * Rank correlation (Spearman 1904).
     *
     * @param x values
     * @param y values in the same order; pairs with NaN are left out
     * @return from -1 to 1; NaN for fewer than three pairs or values that do not vary
     */
    public static double correlation(double[] x, double[] y) {
        int[] both = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        return both.length < LEAST
                ? Double.NaN
                : new SpearmansCorrelation().correlation(picked(x, both), picked(y, both));
    }

    /**
     * Partial rank correlation: what is left of the correlation of two when others are held (Kendall 1942, Biometrika 32,
     * 277-283; of ranks, Iman and Conover 1980, Communications in Statistics A9, 1749-1842), by the inverse P of the
     * matrix of rank correlations, {@code -P01 / sqrt(P00 P11)}.
     *
     * @param x values
     * @param y values in the same order; places with NaN in it are left out
     * @param held values of the others in the same order, without NaN
     * @return from -1 to 1; NaN for fewer than three places more than are held, values that do not vary, or of which one is
     *     told by the others
     */
    public static double partialCorrelation(double[] x, double[] y, List<double[]> held) {
        int[] both = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        if (both.length < LEAST + held.size()) {
            return Double.NaN;
        }
        double[][] columns = Stream.concat(Stream.of(x, y), held.stream())
                .map(values -> picked(values, both))
                .toArray(double[][]::new);
        RealMatrix rows = new Array2DRowRealMatrix(columns).transpose();
        RealMatrix ranks = new SpearmansCorrelation().computeCorrelationMatrix(rows);
        DecompositionSolver solver = new LUDecomposition(ranks, ROUNDING).getSolver();
        if (Arrays.stream(ranks.getData()).flatMapToDouble(Arrays::stream).anyMatch(Double::isNaN)
                || !solver.isNonSingular()) {
            return Double.NaN;
        }
        RealMatrix inverse = solver.getInverse();
        return -inverse.getEntry(0, 1) / Math.sqrt(inverse.getEntry(0, 0) * inverse.getEntry(1, 1));
    }

    /**
     * The value that a share of the values does not exceed, on the straight line between its neighbours (Hyndman and Fan
     * 1996, American Statistician 50, 361-365, definition 7).
     *
     * @param values values, NaN left out
     * @param share from 0 to 1
     * @return the value, NaN of none
     */
    public static double quantile(double[] values, double share) {
        double[] sorted =
                Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double place = share * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /**
     * The 95 per cent interval of a rank correlation by sampling, on Fisher's scale with the variance {@code 1.06 / (n -
     * 3)} of Fieller, Hartley and Pearson (1957), Biometrika 44, 470-481.
     *
     * @param correlation the rank correlation
     * @param pairs of how many pairs
     * @return lower and upper end; NaN for fewer than four pairs
     */
    public static double[] interval(double correlation, int pairs) {
        if (pairs <= LEAST || Double.isNaN(correlation)) {
            return new double[] {Double.NaN, Double.NaN};
        }
        double z = FastMath.atanh(Math.max(-NEARLY_ONE, Math.min(NEARLY_ONE, correlation)));
        double half = Share.DEVIATIONS * Math.sqrt(1.06 / (pairs - LEAST));
        return new double[] {Math.tanh(z - half), Math.tanh(z + half)};
    }

    /**
     * The probability of a rank correlation as far from 0 by chance alone, on the scale and with the variance of
     * {@link #interval}.
     *
     * @param correlation the rank correlation
     * @param pairs of how many pairs
     * @return NaN for fewer than four pairs
     */
    public static double probability(double correlation, int pairs) {
        if (pairs <= LEAST || Double.isNaN(correlation)) {
            return Double.NaN;
        }
        double z = FastMath.atanh(Math.min(NEARLY_ONE, Math.abs(correlation)));
        return 2 * new NormalDistribution(null, 0, 1).cumulativeProbability(-z / Math.sqrt(1.06 / (pairs - LEAST)));
    }

    private static double[] picked(double[] values, int[] which) {
        return Arrays.stream(which).mapToDouble(i -> values[i]).toArray();
    }
}

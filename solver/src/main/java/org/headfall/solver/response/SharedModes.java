package org.headfall.solver.response;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * Step responses of a table as sums of modes that relax at the same rates whatever the cause and the receptor:
 *
 * <pre>{@code R(t) = R(0) + sum_m w_m (1 - exp(-mu_m t))}</pre>
 *
 * <p>So what all that was taken before does now is held in one number a cause and mode, and superposition takes as long
 * for a late step as for an early one. Rates mu are spread evenly over the logarithm; weights w are the least squares fit to
 * the table on a grid twice as fine as its own, by singular values (Golub and Reinsch 1970, Numer. Math. 14, 403-420) of
 * which the smallest are left out. Curves of Theis come within 0.0005 mm for 1 L/s. Immutable.
 */
final class SharedModes {

    /** Four leave half a millimetre in fields whose heads fall by tens of metres. */
    private static final int MODES_PER_DECADE = 5;

    /** For a table that is read at multiples of a step alone. */
    private static final int MODES_PER_DECADE_OF_MULTIPLES = 4;

    /** Times from which a sample of all multiples of a step grows no closer than by this factor. */
    private static final double SAMPLED_EVERY = 1.05;

    /** Fastest mode as a multiple of the inverse of the first time. */
    private static final double FASTEST = 10;

    /** Share of the largest singular value below which one is left out: lest weights become large and cancel. */
    private static final double SMALLEST = 1e-9;

    /** Parts of the first time, in which curves are straight, that the fit heeds. */
    private static final double[] EARLY = {0.25, 0.5, 0.75};

    /** Times over the first one from which on the fit is judged; before, a table is straight where curves are not. */
    private static final double JUDGED_FROM = 10;

    private final int causes;
    private final int receptors;
    private final double[] rates;
    private final double[] atOnce;

    /** Weights, {@code [receptor][cause and mode]}: in the order in which superposition holds what modes feel. */
    private final double[][] weights;

    /** Sums of the weights of the fastest modes, and of weights over rates, {@code [receptor][cause and number of modes]}. */
    private final double[][] sums;

    private final double[][] sumsOverRates;
    private final double[] times;
    private final DMatrixRMaj misfits;
    private final double judgedFrom;

    private SharedModes(ResponseTable table, double[] rates, double[] times, double judgedFrom) {
        causes = table.causes();
        receptors = table.receptors();
        atOnce = table.atOnce();
        this.rates = rates;
        DMatrixRMaj relaxed = new DMatrixRMaj(times.length, rates.length);
        relaxed.setData(relaxations(times));
        DMatrixRMaj grown = new DMatrixRMaj(times.length, atOnce.length);
        for (int i = 0; i < times.length; i++) {
            double[] values = table.all(times[i]);
            for (int curve = 0; curve < values.length; curve++) {
                grown.set(i, curve, values[curve] - atOnce[curve]);
            }
        }
        DMatrixRMaj fitted = new DMatrixRMaj(rates.length, atOnce.length);
        CommonOps_DDRM.mult(pseudoInverse(relaxed), grown, fitted);
        sums = new double[receptors][causes * (rates.length + 1)];
        sumsOverRates = new double[receptors][causes * (rates.length + 1)];
        this.times = times;
        misfits = new DMatrixRMaj(times.length, atOnce.length);
        CommonOps_DDRM.mult(relaxed, fitted, misfits);
        CommonOps_DDRM.subtractEquals(misfits, grown);
        this.judgedFrom = judgedFrom;
        weights = new double[receptors][causes * rates.length];
        for (int receptor = 0; receptor < receptors; receptor++) {
            for (int cause = 0; cause < causes; cause++) {
                int first = cause * (rates.length + 1);
                for (int m = 0; m < rates.length; m++) {
                    double weight = fitted.get(m, cause * receptors + receptor);
                    weights[receptor][cause * rates.length + m] = weight;
                    sums[receptor][first + m + 1] = sums[receptor][first + m] + weight;
                    sumsOverRates[receptor][first + m + 1] = sumsOverRates[receptor][first + m] + weight / rates[m];
                }
            }
        }
    }

    /**
     * Modes for all times of a table.
     *
     * @param table the responses
     */
    static SharedModes of(ResponseTable table) {
        double[] times = table.times();
        return new SharedModes(
                table,
                ShiftLadder.until(FASTEST / times[0], table.lastTime(), MODES_PER_DECADE),
                fittedTimes(times),
                JUDGED_FROM * times[0]);
    }

    /**
     * Fewer modes, for multiples of a step alone.
     *
     * @param table the responses
     * @param step the step (d)
     * @param steps largest multiple
     */
    static SharedModes atMultiples(ResponseTable table, double step, int steps) {
        double[] rates = ShiftLadder.until(FASTEST / step, step * steps, MODES_PER_DECADE_OF_MULTIPLES);
        return new SharedModes(table, rates, sampledMultiples(step, steps), step);
    }

    private static double[] sampledMultiples(double step, int steps) {
        double[] times = new double[steps];
        int count = 0;
        for (int k = 1; k <= steps; k++) {
            if (k == steps || count == 0 || k * step >= SAMPLED_EVERY * times[count - 1]) {
                times[count++] = k * step;
            }
        }
        return Arrays.copyOf(times, count);
    }

    /** Parts of the first time, then all times and those halfway between them on their logarithm. */
    private static double[] fittedTimes(double[] table) {
        double[] times = new double[EARLY.length + 2 * table.length - 1];
        for (int i = 0; i < EARLY.length; i++) {
            times[i] = EARLY[i] * table[0];
        }
        for (int i = 0; i < table.length; i++) {
            times[EARLY.length + 2 * i] = table[i];
            if (i > 0) {
                times[EARLY.length + 2 * i - 1] = Math.sqrt(table[i - 1] * table[i]);
            }
        }
        return times;
    }

    private double[] relaxations(double[] times) {
        double[] values = new double[times.length * rates.length];
        for (int i = 0; i < times.length; i++) {
            for (int m = 0; m < rates.length; m++) {
                values[i * rates.length + m] = -Math.expm1(-rates[m] * times[i]);
            }
        }
        return values;
    }

    /** Pseudo-inverse without the smallest singular values; throws if the values are not found. */
    static DMatrixRMaj pseudoInverse(DMatrixRMaj matrix) {
        SingularValueDecomposition_F64<DMatrixRMaj> svd =
                DecompositionFactory_DDRM.svd(matrix.numRows, matrix.numCols, true, true, true);
        if (!svd.decompose(matrix.copy())) {
            throw new ModesNotFoundException(
                    "singular values of the relaxation of modes", matrix.numRows, matrix.numCols);
        }
        double[] singular = svd.getSingularValues();
        double largest = Arrays.stream(singular)
                .limit(svd.numberOfSingularValues())
                .max()
                .orElse(0);
        DMatrixRMaj right = svd.getV(null, false);
        for (int k = 0; k < svd.numberOfSingularValues(); k++) {
            double inverse = singular[k] > SMALLEST * largest ? 1 / singular[k] : 0;
            for (int m = 0; m < right.numRows; m++) {
                right.set(m, k, right.get(m, k) * inverse);
            }
        }
        DMatrixRMaj inverse = new DMatrixRMaj(matrix.numCols, matrix.numRows);
        CommonOps_DDRM.mult(right, svd.getU(null, true), inverse);
        return inverse;
    }

    int causes() {
        return causes;
    }

    int receptors() {
        return receptors;
    }

    /** Rates of relaxation mu (1/d), falling; not to be changed. */
    double[] rates() {
        return rates;
    }

    /** R(0) of a receptor and a cause (d/m²). */
    double atOnce(int receptor, int cause) {
        return atOnce[cause * receptors + receptor];
    }

    /** Sum of the weights of the fastest modes, so many of them (d/m²). */
    double sum(int receptor, int cause, int fastest) {
        return sums[receptor][cause * (rates.length + 1) + fastest];
    }

    /** Sum of the weights of the fastest modes, so many of them, each over its rate (d²/m²). */
    double sumOverRates(int receptor, int cause, int fastest) {
        return sumsOverRates[receptor][cause * (rates.length + 1) + fastest];
    }

    /** Weights of a receptor, all modes of the first cause, then those of the next; not to be changed (d/m²). */
    double[] weights(int receptor) {
        return weights[receptor];
    }

    /** Largest difference to the table at any time but the very first (d/m²). */
    double misfit() {
        double largest = 0;
        for (int curve = 0; curve < atOnce.length; curve++) {
            largest = Math.max(largest, misfit(curve, Double.POSITIVE_INFINITY));
        }
        return largest;
    }

    /**
     * Largest error of drawdown at any receptor by differences to the table up to a time, the very first times left out, as if
     * those of all causes went the same way (m).
     *
     * @param until the time (d)
     * @param moved by how much the discharge of each cause has changed (m³/d)
     */
    double error(double until, double[] moved) {
        double largest = 0;
        for (int receptor = 0; receptor < receptors; receptor++) {
            double sum = 0;
            for (int cause = 0; cause < causes; cause++) {
                sum += moved[cause] * misfit(cause * receptors + receptor, until);
            }
            largest = Math.max(largest, sum);
        }
        return largest;
    }

    private double misfit(int curve, double until) {
        double largest = 0;
        for (int i = 0; i < times.length; i++) {
            // Beyond, the first of the later times is heeded too.
            if (times[i] >= judgedFrom) {
                largest = Math.max(largest, Math.abs(misfits.get(i, curve)));
            }
            if (times[i] >= until) {
                break;
            }
        }
        return largest;
    }
}

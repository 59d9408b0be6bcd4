package org.headfall.scenarios.spacing;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.bore.WellLoss;

/** Bores in a layout: drawdown in each by all. */
final class FieldLayout {

    private static final int MOST_STEPS = 60;
    private static final double TOLERANCE = 1e-9;

    private final double[][] responses;
    private final WellLoss loss;

    /**
     * Bores in places.
     *
     * @param places where they stand
     * @param response drawdown per discharge by distance (d/m²); at zero distance, that at the wall
     * @param loss loss of each bore
     */
    FieldLayout(List<Position> places, DoubleUnaryOperator response, WellLoss loss) {
        int n = places.size();
        this.loss = loss;
        responses = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                responses[i][j] = response.applyAsDouble(LayoutDistances.distance(places.get(i), places.get(j)));
                responses[j][i] = responses[i][j];
            }
        }
    }

    /** Drawdown in each bore, loss included, if all take the same rate (m). */
    double[] drawdown(double rate) {
        double[] drawdown = new double[responses.length];
        for (int i = 0; i < drawdown.length; i++) {
            for (double response : responses[i]) {
                drawdown[i] += rate * response;
            }
            drawdown[i] += loss.at(rate);
        }
        return drawdown;
    }

    /** Mean drawdown in a bore by its neighbours, if all take the same rate (m). */
    double interference(double rate) {
        double sum = 0;
        for (int i = 0; i < responses.length; i++) {
            for (int j = 0; j < responses.length; j++) {
                sum += i == j ? 0 : rate * responses[i][j];
            }
        }
        return sum / responses.length;
    }

    /** Total rate if the drawdown in every bore is the same (m³/d), by Newton's method. */
    double totalRate(double drawdown) {
        if (drawdown <= 0) {
            return 0;
        }
        int n = responses.length;
        DMatrixRMaj rates = new DMatrixRMaj(n, 1);
        DMatrixRMaj missing = new DMatrixRMaj(n, 1);
        DMatrixRMaj step = new DMatrixRMaj(n, 1);
        for (int round = 0; round < MOST_STEPS; round++) {
            DMatrixRMaj slopes = new DMatrixRMaj(responses);
            double largest = 0;
            for (int i = 0; i < n; i++) {
                double sum = loss.at(rates.get(i)) - drawdown;
                for (int j = 0; j < n; j++) {
                    sum += responses[i][j] * rates.get(j);
                }
                slopes.add(i, i, loss.slope(rates.get(i)));
                missing.set(i, -sum);
                largest = Math.max(largest, Math.abs(sum));
            }
            if (largest < TOLERANCE * drawdown) {
                break;
            }
            if (!CommonOps_DDRM.solve(slopes, missing, step)) {
                throw new IllegalStateException("rates of a layout could not be solved for");
            }
            CommonOps_DDRM.addEquals(rates, step);
        }
        return CommonOps_DDRM.elementSum(rates);
    }
}

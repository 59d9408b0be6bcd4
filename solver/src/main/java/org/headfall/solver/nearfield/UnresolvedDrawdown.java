package org.headfall.solver.nearfield;

import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.wording.PlainNumber;

/**
 * Drawdown at the walls of bores by unit discharges of all of them, as far as the grid does not carry it: a small
 * symmetric matrix, zero between bores that stand far apart. Immutable.
 *
 * <p>What one bore leaves at another and the other at it are two estimates of the same number, which agree to some 1e-6
 * of the drawdown where T is constant; their mean is taken. The matrix is positive definite, on which the rules of bores
 * rely: where T jumps strongly between bores a few metres apart the effects between bores are cut back until it is.
 */
public final class UnresolvedDrawdown {

    private static final double CUT = 0.5;
    private static final double ROUNDING = 1e-9;

    private final double[][] perDischarge;

    private UnresolvedDrawdown(double[][] perDischarge) {
        this.perDischarge = perDischarge;
    }

    /**
     * Drawdown between bores.
     *
     * @param bores the bores
     * @param fields near field of each
     * @return the drawdown
     * @throws IllegalArgumentException if a bore is too wide for its cell; the message names it and the largest radius
     */
    public static UnresolvedDrawdown between(List<Bore> bores, List<NearField> fields) {
        int n = bores.size();
        double[][] perDischarge = new double[n][n];
        for (int i = 0; i < n; i++) {
            Bore bore = bores.get(i);
            perDischarge[i][i] = atWall(bore, fields.get(i));
            for (int j = 0; j < i; j++) {
                double mean = 0.5
                        * (fields.get(i).unresolvedFrom(fields.get(j))
                                + fields.get(j).unresolvedFrom(fields.get(i)));
                perDischarge[i][j] = mean;
                perDischarge[j][i] = mean;
            }
        }
        while (!positiveDefinite(perDischarge)) {
            cutEffectsBetweenBores(perDischarge);
        }
        return new UnresolvedDrawdown(perDischarge);
    }

    private static double atWall(Bore bore, NearField field) {
        double allowed = field.largestRadius();
        if (bore.screenRadius() >= allowed) {
            throw new IllegalArgumentException("bore '" + bore.name() + "': its radius of "
                    + PlainNumber.of(bore.screenRadius()) + " m is too large for its cell, allowed below "
                    + PlainNumber.about(allowed) + " m: use larger cells");
        }
        return field.unresolvedAtWall();
    }

    /** Positive definite but for rounding, so that bores at one and the same place pass. */
    private static boolean positiveDefinite(double[][] matrix) {
        int n = matrix.length;
        if (n == 0) {
            return true;
        }
        DMatrixRMaj copy = new DMatrixRMaj(matrix);
        for (int i = 0; i < n; i++) {
            copy.set(i, i, (1 + ROUNDING) * copy.get(i, i));
        }
        return DecompositionFactory_DDRM.chol(n, true).decompose(copy);
    }

    private static void cutEffectsBetweenBores(double[][] matrix) {
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix.length; j++) {
                if (i != j) {
                    matrix[i][j] *= CUT;
                }
            }
        }
    }

    /**
     * Drawdown at a bore by a unit discharge of another, or of itself.
     *
     * @param receptor the bore where
     * @param cause the bore by which
     * @return drawdown per discharge (d/m²)
     */
    public double perDischarge(int receptor, int cause) {
        return perDischarge[receptor][cause];
    }
}

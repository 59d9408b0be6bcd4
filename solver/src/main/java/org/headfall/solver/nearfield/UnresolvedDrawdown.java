package org.headfall.solver.nearfield;

import java.util.ArrayList;
import java.util.Arrays;
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
 * rely. Where T jumps strongly between bores a few metres apart the estimates need not be: such bores, and no others, then
 * have the nearest effects on each other that are ({@link NearestCorrelation}), their own drawdown unchanged, and
 * {@link #approximations} says by how much.
 */
public final class UnresolvedDrawdown {

    private static final double ROUNDING = 1e-9;

    /** Change of an effect, as a part of the bores' own drawdown, from which on it is told: what bores are held exact to. */
    private static final double CHANGE_THAT_COUNTS = 0.005;

    private final double[][] perDischarge;
    private final List<Approximation> approximations;

    private UnresolvedDrawdown(double[][] perDischarge, List<Approximation> approximations) {
        this.perDischarge = perDischarge;
        this.approximations = List.copyOf(approximations);
    }

    /**
     * An effect between two bores that had to be changed.
     *
     * @param bore index of the one
     * @param other index of the other, smaller
     * @param estimated unresolved drawdown of the one by a unit discharge of the other as estimated (d/m²)
     * @param taken what is taken instead (d/m²)
     */
    public record Approximation(int bore, int other, double estimated, double taken) {}

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
        List<Approximation> approximations = new ArrayList<>();
        if (!positiveDefinite(perDischarge)) {
            for (int[] group : groups(perDischarge)) {
                makeDefinite(perDischarge, group, approximations);
            }
        }
        return new UnresolvedDrawdown(perDischarge, approximations);
    }

    private static double atWall(Bore bore, NearField field) {
        double allowed = field.largestRadius();
        if (!(bore.screenRadius() < allowed)) {
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

    /** Bores that have effects on each other, directly or through others. */
    private static List<int[]> groups(double[][] matrix) {
        List<int[]> groups = new ArrayList<>();
        boolean[] seen = new boolean[matrix.length];
        for (int first = 0; first < matrix.length; first++) {
            if (!seen[first]) {
                groups.add(groupOf(first, matrix, seen));
            }
        }
        return groups;
    }

    private static int[] groupOf(int first, double[][] matrix, boolean[] seen) {
        int[] group = new int[matrix.length];
        group[0] = first;
        seen[first] = true;
        int count = 1;
        for (int k = 0; k < count; k++) {
            for (int other = 0; other < matrix.length; other++) {
                if (!seen[other] && matrix[group[k]][other] != 0) {
                    seen[other] = true;
                    group[count++] = other;
                }
            }
        }
        return Arrays.copyOf(group, count);
    }

    /** Changes the effects within a group as little as makes them definite, if they are not. */
    private static void makeDefinite(double[][] matrix, int[] group, List<Approximation> approximations) {
        int n = group.length;
        double[][] part = new double[n][n];
        DMatrixRMaj shares = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                part[i][j] = matrix[group[i]][group[j]];
                shares.set(i, j, i == j ? 1 : part[i][j] / owns(matrix, group[i], group[j]));
            }
        }
        if (positiveDefinite(part)) {
            return;
        }
        DMatrixRMaj nearest = NearestCorrelation.to(shares);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double taken = nearest.get(i, j) * owns(matrix, group[i], group[j]);
                if (Math.abs(nearest.get(i, j) - shares.get(i, j)) > CHANGE_THAT_COUNTS) {
                    approximations.add(new Approximation(
                            Math.max(group[i], group[j]), Math.min(group[i], group[j]), part[i][j], taken));
                }
                matrix[group[i]][group[j]] = taken;
                matrix[group[j]][group[i]] = taken;
            }
        }
    }

    /** Mean of the own drawdown of two bores (d/m²), the largest that effects on each other can be. */
    private static double owns(double[][] matrix, int bore, int other) {
        return Math.sqrt(matrix[bore][bore] * matrix[other][other]);
    }

    /** Effects of bores on each other that are approximate because T changes too strongly between them; mostly none. */
    public List<Approximation> approximations() {
        return approximations;
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

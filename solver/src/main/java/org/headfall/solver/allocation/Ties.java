package org.headfall.solver.allocation;

import java.util.Arrays;
import java.util.List;

/**
 * Variables that are held equal, so that a programme of few variables stands for one of many.
 *
 * @param groups for each variable the number of its group, all numbers from 0 to {@code count - 1}
 * @param count number of groups
 */
@SuppressWarnings("ArrayRecordComponent") // one number a variable, never compared
public record Ties(int[] groups, int count) {

    /** Whether every variable stands alone. */
    public boolean areNone() {
        return count == groups.length;
    }

    /**
     * A programme whose variables are the groups.
     *
     * @param free the programme of single variables
     * @return the programme; a group is bounded by the least of its bounds
     */
    public Programme of(Programme free) {
        double[] most = new double[count];
        Arrays.fill(most, Double.POSITIVE_INFINITY);
        for (int i = 0; i < groups.length; i++) {
            most[groups[i]] = Math.min(most[groups[i]], free.most()[i]);
        }
        double[][] curvature = new double[free.curvature().length == 0 ? 0 : count][count];
        for (int i = 0; i < free.curvature().length; i++) {
            for (int j = 0; j < groups.length; j++) {
                curvature[groups[i]][groups[j]] += free.curvature()[i][j];
            }
        }
        List<Excess> excesses = free.excesses().stream()
                .map(one -> new Excess(sums(one.coefficients()), one.bound(), one.weight(), one.curvature()))
                .toList();
        return new Programme(most, sums(free.cost()), curvature, excesses);
    }

    /** A row over the groups. */
    public Row of(Row free) {
        return new Row(sums(free.coefficients()), free.bound(), free.givesWay());
    }

    private double[] sums(double[] values) {
        double[] sums = new double[count];
        for (int i = 0; i < groups.length; i++) {
            sums[groups[i]] += values[i];
        }
        return sums;
    }

    /** Single variables of an optimum over the groups; its value is the same. */
    public Optimum free(Optimum tied) {
        double[] x = new double[groups.length];
        Arrays.setAll(x, i -> tied.x()[groups[i]]);
        return new Optimum(x, tied.value());
    }
}

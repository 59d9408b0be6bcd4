package org.headfall.solver.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A programme whose excesses are variables of their own, which come last: each at least what it is the excess of. */
final class ExcessVariables {

    /** Upper bound of an excess that no values reach, so that it is a variable like any other. */
    private static final double SMALL = 1e-3;

    private final Programme of;
    private final int all;

    ExcessVariables(Programme of) {
        this.of = of;
        all = of.most().length + of.excesses().size();
    }

    /** The programme without excesses. */
    Programme programme() {
        int n = of.most().length;
        double[] most = Arrays.copyOf(of.most(), all);
        double[] cost = Arrays.copyOf(of.cost(), all);
        double[][] curvature = new double[all][all];
        for (int i = 0; i < of.curvature().length; i++) {
            System.arraycopy(of.curvature()[i], 0, curvature[i], 0, n);
        }
        boolean curved = of.curvature().length > 0;
        for (int k = n; k < all; k++) {
            Excess excess = of.excesses().get(k - n);
            most[k] = SMALL + largest(excess);
            cost[k] = excess.weight();
            curvature[k][k] = excess.curvature();
            curved |= excess.curvature() > 0;
        }
        return new Programme(most, cost, curved ? curvature : new double[0][]);
    }

    private double largest(Excess excess) {
        double sum = -excess.bound();
        for (int i = 0; i < of.most().length; i++) {
            sum += Math.max(0, excess.coefficients()[i]) * of.most()[i];
        }
        return Math.max(0, sum);
    }

    /** Rows over all variables, followed by those that make excesses what they are. */
    List<Row> rows(List<Row> rows) {
        List<Row> padded = new ArrayList<>();
        for (Row row : rows) {
            padded.add(new Row(Arrays.copyOf(row.coefficients(), all), row.bound(), row.givesWay()));
        }
        for (int k = of.most().length; k < all; k++) {
            Excess excess = of.excesses().get(k - of.most().length);
            double[] coefficients = Arrays.copyOf(excess.coefficients(), all);
            coefficients[k] = -1;
            padded.add(new Row(coefficients, excess.bound(), Double.POSITIVE_INFINITY));
        }
        return padded;
    }
}

package org.headfall.scenarios.raster;

/**
 * Weights of source cells in target cells along one axis.
 *
 * <p>A target cell that is wider than the source cell under its centre takes the mean over its width: each source cell
 * weighs as much as the length it shares. A narrower one takes the linear interpolation between source centres at its
 * own centre; beyond the outermost source centres the outermost value holds. The weights of a target cell add up to
 * the share of it that the source covers, 1 where it covers all (0 for a narrow cell whose centre is outside).
 */
final class AxisWeights {
    private final int[] first;
    private final int[] start;
    private final double[] weights;

    private AxisWeights(int[] first, int[] start, double[] weights) {
        this.first = first;
        this.start = start;
        this.weights = weights;
    }

    /**
     * Weights between two sets of ascending edges.
     *
     * @param source edges of the source cells
     * @param target edges of the target cells
     */
    static AxisWeights between(double[] source, double[] target) {
        int cells = target.length - 1;
        int[] first = new int[cells];
        int[] start = new int[cells + 1];
        for (int i = 0; i < cells; i++) {
            first[i] = firstSource(source, target[i], target[i + 1]);
            int count = lastSource(source, first[i], target[i], target[i + 1]) - first[i] + 1;
            start[i + 1] = start[i] + Math.max(0, count);
        }
        double[] weights = new double[start[cells]];
        for (int i = 0; i < cells; i++) {
            for (int k = start[i]; k < start[i + 1]; k++) {
                weights[k] = weight(source, first[i] + k - start[i], target[i], target[i + 1]);
            }
        }
        return new AxisWeights(first, start, weights);
    }

    /** The first source cell with a weight in a target cell. */
    int first(int target) {
        return first[target];
    }

    /** The number of source cells with a weight in a target cell. */
    int count(int target) {
        return start[target + 1] - start[target];
    }

    /** The weight of source cell {@code first(target) + k}. */
    double weight(int target, int k) {
        return weights[start[target] + k];
    }

    /**
     * Adds a row of source values to the sums of the target cells.
     *
     * @param values the source values along this axis, NaN for holes
     * @param rowWeight weight of the row, 0 at least
     * @param averaging in which terms values are summed up
     * @param sum receives the weighted values, one a target cell
     * @param weight receives the weights
     * @throws IllegalArgumentException if a geometric mean meets a value that is not positive
     */
    void addRow(double[] values, double rowWeight, Averaging averaging, double[] sum, double[] weight) {
        for (int target = 0; target < sum.length; target++) {
            int begin = start[target];
            int end = start[target + 1];
            for (int k = begin; k < end; k++) {
                double share = rowWeight * weights[k];
                double value = values[first[target] + k - begin];
                if (share > 0 && !Double.isNaN(value)) {
                    sum[target] += share * averaging.forward(value);
                    weight[target] += share;
                }
            }
        }
    }

    private static int firstSource(double[] source, double low, double high) {
        double centre = 0.5 * (low + high);
        int cell = cellOf(source, centre);
        if (isCoarser(source, cell, low, high)) {
            return cellOf(source, Math.max(low, source[0]));
        }
        return Math.max(0, centre < centre(source, cell) ? cell - 1 : cell);
    }

    private static int lastSource(double[] source, int first, double low, double high) {
        double centre = 0.5 * (low + high);
        int last = source.length - 2;
        if (high <= source[0] || low >= source[last + 1]) {
            return first - 1;
        }
        if (isCoarser(source, cellOf(source, centre), low, high)) {
            return cellOf(source, Math.min(high, source[last + 1]));
        }
        if (centre < source[0] || centre > source[last + 1]) {
            return first - 1;
        }
        return centre <= centre(source, first) ? first : Math.min(first + 1, last);
    }

    private static double weight(double[] source, int cell, double low, double high) {
        double centre = 0.5 * (low + high);
        if (isCoarser(source, cellOf(source, centre), low, high)) {
            double shared = Math.min(high, source[cell + 1]) - Math.max(low, source[cell]);
            return Math.max(0, shared) / (high - low);
        }
        return hat(source, cell, centre);
    }

    /** 1 at the centre of the cell, falling to 0 at the neighbouring centres, constant towards the rim. */
    private static double hat(double[] source, int cell, double at) {
        double own = centre(source, cell);
        int neighbour = at < own ? cell - 1 : cell + 1;
        if (neighbour < 0 || neighbour > source.length - 2) {
            return 1;
        }
        double other = centre(source, neighbour);
        return Math.max(0, (other - at) / (other - own));
    }

    private static boolean isCoarser(double[] source, int cell, double low, double high) {
        return high - low > (source[cell + 1] - source[cell]) * (1 + 1e-9);
    }

    private static double centre(double[] source, int cell) {
        return 0.5 * (source[cell] + source[cell + 1]);
    }

    /** The cell that holds a place, the outermost one for places outside; a shared edge belongs to the upper cell. */
    private static int cellOf(double[] edges, double at) {
        int low = 0;
        int high = edges.length - 2;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (edges[middle] <= at) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }
}

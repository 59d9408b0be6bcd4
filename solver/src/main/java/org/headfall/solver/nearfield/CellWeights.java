package org.headfall.solver.nearfield;

/**
 * Weights of some cells; all other cells have none. The arrays are not copied and must not change.
 *
 * @param cells the cells, each once
 * @param weights weight of each of these cells (-)
 */
@SuppressWarnings("ArrayRecordComponent") // read in every time step, shared and never compared
public record CellWeights(int[] cells, double[] weights) {

    /** All weight on one cell. */
    public static CellWeights single(int cell) {
        return new CellWeights(new int[] {cell}, new double[] {1});
    }

    /**
     * Weighted sum of a field.
     *
     * @param field one value a cell
     * @return the sum
     */
    public double of(double[] field) {
        double sum = 0;
        for (int k = 0; k < cells.length; k++) {
            sum += weights[k] * field[cells[k]];
        }
        return sum;
    }

    /** Weighted sum of a field in single precision. */
    public double of(float[] field) {
        double sum = 0;
        for (int k = 0; k < cells.length; k++) {
            sum += weights[k] * field[cells[k]];
        }
        return sum;
    }

    /**
     * Spreads an amount over the cells.
     *
     * @param amount the amount
     * @param field changed: each cell receives its weight times the amount
     */
    public void add(double amount, double[] field) {
        for (int k = 0; k < cells.length; k++) {
            field[cells[k]] += weights[k] * amount;
        }
    }
}

package org.headfall.solver.linear;

/**
 * Incomplete Cholesky factors without fill (Meijerink and van der Vorst 1977, method ICCG(0)): iterations grow with the
 * number of columns or rows.
 */
public final class IncompleteCholesky implements Preconditioner {
    private final FivePointMatrix matrix;
    private final double[] inversePivot;

    /** Factors a matrix. */
    public IncompleteCholesky(FivePointMatrix matrix) {
        this.matrix = matrix;
        this.inversePivot = new double[matrix.cells()];
        diagonalChanged();
    }

    @Override
    public void diagonalChanged() {
        int columns = matrix.columns();
        double[] east = matrix.east();
        double[] north = matrix.north();
        for (int k = 0; k < inversePivot.length; k++) {
            double pivot = matrix.diagonal()[k];
            if (k > 0) {
                pivot -= east[k - 1] * east[k - 1] * inversePivot[k - 1];
            }
            if (k >= columns) {
                pivot -= north[k - columns] * north[k - columns] * inversePivot[k - columns];
            }
            inversePivot[k] = 1 / pivot;
        }
    }

    @Override
    public void apply(double[][] residuals, double[][] corrections, int count) {
        for (int l = 0; l < count; l++) {
            apply(residuals[l], corrections[l]);
        }
    }

    private void apply(double[] residual, double[] correction) {
        int columns = matrix.columns();
        int cells = inversePivot.length;
        double[] east = matrix.east();
        double[] north = matrix.north();
        for (int k = 0; k < cells; k++) {
            double sum = residual[k];
            sum += k > 0 ? east[k - 1] * correction[k - 1] : 0;
            sum += k >= columns ? north[k - columns] * correction[k - columns] : 0;
            correction[k] = sum * inversePivot[k];
        }
        for (int k = cells - 1; k >= 0; k--) {
            double sum = east[k] > 0 ? east[k] * correction[k + 1] : 0;
            sum += north[k] > 0 ? north[k] * correction[k + columns] : 0;
            correction[k] += sum * inversePivot[k];
        }
    }
}

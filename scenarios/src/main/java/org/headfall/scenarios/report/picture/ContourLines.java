package org.headfall.scenarios.report.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines of equal value between the centres of the cells of a rectilinear grid: marching squares (Lorensen and Cline 1987
 * in two dimensions), straight within each square of four centres. Squares with a missing value have no line.
 */
final class ContourLines {

    private final double[] x;
    private final double[] y;
    private final float[] values;

    /**
     * Lines of a field.
     *
     * @param x eastings of the centres, ascending (m)
     * @param y northings of the centres, ascending (m)
     * @param values a value a cell, west to east within rows, rows from south to north
     */
    ContourLines(double[] x, double[] y, float[] values) {
        this.x = x;
        this.y = y;
        this.values = values;
    }

    /** A straight piece of a line, in the metres of the grid. */
    record Piece(double fromX, double fromY, double toX, double toY) {}

    /** Pieces of the lines of a value. */
    List<Piece> at(double value) {
        List<Piece> pieces = new ArrayList<>();
        for (int row = 0; row + 1 < y.length; row++) {
            for (int column = 0; column + 1 < x.length; column++) {
                addSquare(pieces, row, column, value);
            }
        }
        return pieces;
    }

    private void addSquare(List<Piece> pieces, int row, int column, double value) {
        double[] corner = {
            value(row, column) - value,
            value(row, column + 1) - value,
            value(row + 1, column + 1) - value,
            value(row + 1, column) - value
        };
        double[][] place = {
            {x[column], y[row]}, {x[column + 1], y[row]}, {x[column + 1], y[row + 1]}, {x[column], y[row + 1]}
        };
        List<double[]> crossings = new ArrayList<>(4);
        for (int side = 0; side < 4; side++) {
            double from = corner[side];
            double to = corner[(side + 1) % 4];
            if (from < 0 != to < 0 && !Double.isNaN(from - to)) {
                double share = from / (from - to);
                double[] a = place[side];
                double[] b = place[(side + 1) % 4];
                crossings.add(new double[] {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])});
            }
        }
        for (int i = 0; i + 1 < crossings.size(); i += 2) {
            double[] a = crossings.get(i);
            double[] b = crossings.get(i + 1);
            pieces.add(new Piece(a[0], a[1], b[0], b[1]));
        }
    }

    private double value(int row, int column) {
        return values[row * x.length + column];
    }
}

package org.headfall.scenarios.raster;

import java.util.Arrays;
import org.headfall.solver.wording.PlainNumber;

/**
 * Values of rasters on the cells of a rectilinear grid.
 *
 * <p>Along each axis by itself: a grid cell wider than the raster's cells takes their mean over its width, a narrower
 * one the linear interpolation between raster centres. So equal or finer grids get bilinear interpolation, coarser
 * grids get cell means, and long thin cells of a refined grid get the right mixture. Linear maps are reproduced
 * exactly inside the outermost raster centres wherever the grid is finer or its edges fall on raster edges.
 *
 * <p>Holes take no part; a grid cell of which holes and places outside the raster make up more than half of the
 * weight has no value.
 */
public final class CellSampler {
    private static final double LEAST_WEIGHT = 0.5 - 1e-9;

    private final double[] edgesX;
    private final double[] edgesY;

    /**
     * A sampler for one grid.
     *
     * @param edgesX ascending cell edges along x (m)
     * @param edgesY ascending cell edges along y (m)
     */
    public CellSampler(double[] edgesX, double[] edgesY) {
        this.edgesX = edgesX.clone();
        this.edgesY = edgesY.clone();
    }

    /**
     * The values of a raster on the cells of the grid.
     *
     * @param raster any raster, in the same coordinates as the grid
     * @param averaging how several raster values become one
     * @return one value a grid cell, row by row from south to north; NaN where the raster has none
     * @throws IllegalArgumentException if a geometric mean meets a value that is not positive
     */
    public double[] cellValues(Raster raster, Averaging averaging) {
        AxisWeights weightsX = AxisWeights.between(raster.edgesX(), edgesX);
        AxisWeights weightsY = AxisWeights.between(raster.edgesY(), edgesY);
        int columns = edgesX.length - 1;
        int rows = edgesY.length - 1;
        double[] values = new double[columns * rows];
        double[] sum = new double[columns];
        double[] weight = new double[columns];
        for (int row = 0; row < rows; row++) {
            Arrays.fill(sum, 0);
            Arrays.fill(weight, 0);
            for (int k = 0; k < weightsY.count(row); k++) {
                weightsX.addRow(raster.row(weightsY.first(row) + k), weightsY.weight(row, k), averaging, sum, weight);
            }
            for (int column = 0; column < columns; column++) {
                values[row * columns + column] =
                        weight[column] < LEAST_WEIGHT ? Double.NaN : averaging.back(sum[column] / weight[column]);
            }
        }
        return values;
    }

    /**
     * The raster on the cells of the grid, for instance a map with cells of free size on even ones.
     *
     * @param raster any raster
     * @param averaging how several raster values become one
     * @return a raster on the sampler's cells
     */
    public Raster resample(Raster raster, Averaging averaging) {
        return new Raster(edgesX, edgesY, cellValues(raster, averaging));
    }

    /**
     * A sampler with square cells from the south-western corner of a raster over all of it.
     *
     * @param raster the raster to cover
     * @param cellSize length of the new cells (m), positive
     * @param limits greatest number of cells
     * @return the sampler; its last column and row may reach beyond the raster by less than a cell
     * @throws IllegalArgumentException if the cell size is not positive or makes too many cells
     */
    public static CellSampler even(Raster raster, double cellSize, RasterLimits limits) {
        double columns = Math.ceil(raster.extent().width() / cellSize - 1e-6);
        double rows = Math.ceil(raster.extent().height() / cellSize - 1e-6);
        if (!(cellSize > 0) || !(columns * rows <= limits.cells())) {
            throw new IllegalArgumentException("cells of " + PlainNumber.of(cellSize) + " m over " + raster.extent()
                    + " m; allowed is a positive size that gives at most " + limits.cells() + " cells");
        }
        return new CellSampler(
                Raster.evenEdges(raster.extent().west(), cellSize, Math.max(1, (int) columns)),
                Raster.evenEdges(raster.extent().south(), cellSize, Math.max(1, (int) rows)));
    }
}

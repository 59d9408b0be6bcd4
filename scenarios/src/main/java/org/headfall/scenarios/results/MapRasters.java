package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalInt;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.raster.CellSampler;
import org.headfall.scenarios.raster.GeoTiffWriter;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.raster.RasterLimits;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Writes heads and drawdown at the start, the report dates and the end as GeoTIFF for a GIS:
 * {@code head-2027-07-01.tif}, {@code drawdown-2037-07-01.tif}. Pixels are even, as fine as the finest cell but at most
 * about a million: the mean by area of smaller cells, interpolated between the centres of others.
 */
public final class MapRasters implements RunOutput {

    private static final double MOST_PIXELS = 1e6;

    /** Share of a pixel by which it may touch a cell by rounding alone. */
    private static final double ROUNDING = 1e-6;

    @Override
    public void write(Path folder, FinishedRun run) throws IOException {
        RunDescription description = run.description();
        HeadGrid start = run.recording().startGrid();
        for (HeadGrid grid : run.recording().grids()) {
            String date = description.calendar().at(grid.day()).toLocalDate().toString();
            write(folder.resolve("head-" + date + ".tif"), description, grid.head());
            if (grid.day() > start.day()) {
                write(folder.resolve("drawdown-" + date + ".tif"), description, grid.drawdownSince(start));
            }
        }
    }

    /**
     * Writes one field of the grid.
     *
     * @param file the file
     * @param description the run with the grid
     * @param values value of each cell, NaN where there is none
     * @throws IOException if the file cannot be written
     */
    public static void write(Path file, RunDescription description, double[] values) throws IOException {
        writeEven(file, description, even(description.grid(), values));
    }

    /**
     * Writes the least value of the cells that each pixel touches: for what is allowed, which may change from cell to cell at
     * once and must not be more anywhere than the cell allows.
     *
     * @param file the file
     * @param description the run with the grid
     * @param values value of each cell, NaN where there is none
     * @throws IOException if the file cannot be written
     */
    public static void writeLeast(Path file, RunDescription description, double[] values) throws IOException {
        RectilinearGrid grid = description.grid();
        Raster even = even(grid, values);
        double[] x = even.edgesX();
        double[] y = even.edgesY();
        double[] least = even.values();
        for (int row = 0; row < even.rows(); row++) {
            for (int column = 0; column < even.columns(); column++) {
                int pixel = row * even.columns() + column;
                least[pixel] = Double.isNaN(least[pixel])
                        ? Double.NaN
                        : least(grid, values, new Extent(x[column], y[row], x[column + 1], y[row + 1]));
            }
        }
        writeEven(file, description, new Raster(x, y, least));
    }

    /** Least value of the cells that a part of the map touches by more than rounding; NaN if none has one. */
    private static double least(RectilinearGrid grid, double[] values, Extent part) {
        double inset = ROUNDING * part.width();
        int west = grid.x().locate(part.west() + inset);
        int east = grid.x().locate(Math.min(part.east(), grid.x().end()) - inset);
        int south = grid.y().locate(part.south() + inset);
        int north = grid.y().locate(Math.min(part.north(), grid.y().end()) - inset);
        double least = Double.NaN;
        for (int row = south; row <= north; row++) {
            for (int column = west; column <= east; column++) {
                double value = values[row * grid.columns() + column];
                least = value < least || Double.isNaN(least) ? value : least;
            }
        }
        return least;
    }

    private static Raster even(RectilinearGrid grid, double[] values) {
        Raster cells = new Raster(grid.x().edges(), grid.y().edges(), values);
        return CellSampler.even(cells, pixelSize(grid), RasterLimits.DEFAULT).resample(cells, Averaging.ARITHMETIC);
    }

    private static void writeEven(Path file, RunDescription description, Raster even) throws IOException {
        OptionalInt code = description.mapReference().isPresent()
                ? OptionalInt.of(CoordinateReference.parse(
                                description.mapReference().get().code())
                        .epsgCode())
                : OptionalInt.empty();
        new GeoTiffWriter().write(file, even, code);
    }

    /** Side of a pixel (m). */
    static double pixelSize(RectilinearGrid grid) {
        double area =
                (grid.x().end() - grid.x().start()) * (grid.y().end() - grid.y().start());
        double finest = Math.min(grid.x().smallestWidth(), grid.y().smallestWidth());
        return Math.max(finest, Math.sqrt(area / MOST_PIXELS));
    }
}

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
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Writes heads and drawdown at the start, the report dates and the end as GeoTIFF for a GIS:
 * {@code head-2027-07-01.tif}, {@code drawdown-2037-07-01.tif}. Pixels are even, the mean of the cells they cover by
 * area, as fine as the finest cell but at most about a million.
 */
public final class MapRasters implements RunOutput {

    private static final double MOST_PIXELS = 1e6;

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
        RectilinearGrid grid = description.grid();
        Raster cells = new Raster(grid.x().edges(), grid.y().edges(), values);
        Raster even =
                CellSampler.even(cells, pixelSize(grid), RasterLimits.DEFAULT).resample(cells, Averaging.ARITHMETIC);
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

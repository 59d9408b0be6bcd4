package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * How large a raster may be. Readers check before they reserve memory.
 *
 * @param fileBytes greatest size of the file in bytes
 * @param cells greatest number of cells
 */
public record RasterLimits(long fileBytes, int cells) {

    /** Files up to 512 MB and 25 million cells (5,000 by 5,000; 200 MB of memory). */
    public static final RasterLimits DEFAULT = new RasterLimits(512_000_000L, 25_000_000);

    void requireSize(Path file) throws IOException {
        long bytes = Files.size(file);
        if (bytes > fileBytes) {
            throw SpatialFormatException.of(
                    file,
                    "a file of " + bytes / 1_000_000 + " MB",
                    "rasters up to " + fileBytes / 1_000_000
                            + " MB; cut it to the extent of the grid or use larger cells");
        }
    }

    /** The number of cells as an int, if the raster is neither empty nor too large. */
    int requireCells(Path file, long columns, long rows) {
        if (columns < 1 || rows < 1) {
            throw SpatialFormatException.of(
                    file, columns + " columns and " + rows + " rows", "at least one column and one row");
        }
        if (columns > cells || rows > cells || columns * rows > cells) {
            throw SpatialFormatException.of(
                    file,
                    columns + " columns and " + rows + " rows",
                    "rasters up to " + cells + " cells; cut it to the extent of the grid or use larger cells");
        }
        return (int) (columns * rows);
    }
}

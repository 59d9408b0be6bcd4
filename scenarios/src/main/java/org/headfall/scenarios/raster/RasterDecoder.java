package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** One raster file format. */
sealed interface RasterDecoder permits AsciiGridDecoder, GeoTiffDecoder, NetcdfDecoder {

    /**
     * Reads one layer; the file is known to begin like a file of this format.
     *
     * @param layer the layer asked for, null for the only one
     * @throws org.headfall.scenarios.spatial.SpatialFormatException if the content is not usable
     * @throws IOException if the file system fails
     */
    RasterFile decode(Path file, @Nullable String layer, RasterLimits limits) throws IOException;
}

package org.headfall.scenarios.raster;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;

/**
 * Reads a raster from an ESRI ASCII grid, a GeoTIFF or a CF NetCDF file; the first bytes of the file decide which.
 */
public final class RasterReader {
    private static final String FORMATS = "an ESRI ASCII grid, a GeoTIFF or a CF NetCDF file";

    private final RasterLimits limits;

    /**
     * A reader.
     *
     * @param limits greatest sizes
     */
    public RasterReader(RasterLimits limits) {
        this.limits = limits;
    }

    /**
     * Reads the only layer of a file.
     *
     * @param file a raster file
     * @return the raster and what the file says about it
     * @throws SpatialFormatException if the file cannot be read, is no raster, is too large or holds several layers
     */
    public RasterFile read(Path file) {
        return read(file, null);
    }

    /**
     * Reads one layer of a file.
     *
     * @param file a raster file
     * @param layer name of the NetCDF variable, or number of the GeoTIFF band from 1; null for the only one
     * @return the raster and what the file says about it
     * @throws SpatialFormatException if the file cannot be read, is no raster or is too large, or if the layer is
     *     not in the file
     */
    public RasterFile read(Path file, @Nullable String layer) {
        try {
            if (Files.isDirectory(file)) {
                throw SpatialFormatException.of(file, "a folder", FORMATS);
            }
            if (!Files.isReadable(file)) {
                throw SpatialFormatException.of(file, "no readable file", FORMATS);
            }
            limits.requireSize(file);
            return decoder(file).decode(file, layer, limits);
        } catch (IOException e) {
            throw SpatialFormatException.of(file, "a file that cannot be read (" + e.getMessage() + ")", FORMATS)
                    .causedBy(e);
        }
    }

    private static RasterDecoder decoder(Path file) throws IOException {
        byte[] start;
        try (InputStream stream = Files.newInputStream(file)) {
            start = stream.readNBytes(8);
        }
        if (startsWith(start, 'I', 'I', 42, 0) || startsWith(start, 'M', 'M', 0, 42)) {
            return new GeoTiffDecoder();
        }
        if (startsWith(start, 'C', 'D', 'F', 1) || startsWith(start, 'C', 'D', 'F', 2) || isHdf(start)) {
            return new NetcdfDecoder();
        }
        rejectKnownOthers(file, start);
        return new AsciiGridDecoder();
    }

    private static void rejectKnownOthers(Path file, byte[] start) {
        if (start.length == 0) {
            throw SpatialFormatException.of(file, "an empty file", FORMATS);
        }
        if (startsWith(start, 'I', 'I', 43) || startsWith(start, 'M', 'M', 0, 43)) {
            throw SpatialFormatException.of(file, "a BigTIFF", "a classic GeoTIFF (under 4 GB)");
        }
        if (startsWith(start, 'C', 'D', 'F', 5)) {
            throw SpatialFormatException.of(
                    file, "a NetCDF file of kind CDF-5", "NetCDF classic, 64-bit offset or NetCDF-4");
        }
        if (startsWith(start, 0x1f, 0x8b) || startsWith(start, 'P', 'K', 3, 4)) {
            throw SpatialFormatException.of(file, "a compressed archive", "the unpacked file: " + FORMATS);
        }
        if (startsWith(start, 0xff, 0xfe) || startsWith(start, 0xfe, 0xff)) {
            throw SpatialFormatException.of(file, "text in UTF-16", "text in UTF-8 or ASCII");
        }
    }

    private static boolean isHdf(byte[] start) {
        return startsWith(start, 0x89, 'H', 'D', 'F');
    }

    private static boolean startsWith(byte[] bytes, int... expected) {
        if (bytes.length < expected.length) {
            return false;
        }
        for (int i = 0; i < expected.length; i++) {
            if ((bytes[i] & 0xff) != expected[i]) {
                return false;
            }
        }
        return true;
    }
}

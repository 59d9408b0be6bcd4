package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import mil.nga.tiff.FileDirectory;
import mil.nga.tiff.TiffReader;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;

/** GeoTIFF 1.0 and 1.1 (OGC 19-008r4, 2019): one band of a north-up raster in projected metres. */
final class GeoTiffDecoder implements RasterDecoder {

    @Override
    public RasterFile decode(Path file, @Nullable String layer, RasterLimits limits) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        TiffDirectoryGuard.keepFirstDirectory(file, bytes);
        try {
            FileDirectory directory = TiffReader.readTiff(bytes).getFileDirectory();
            return decode(file, directory, layer, limits);
        } catch (SpatialFormatException e) {
            throw e;
        } catch (RuntimeException e) {
            // The library reports damage by whatever the damage happens to break.
            throw TiffDirectoryGuard.damaged(file, "a TIFF that cannot be decoded (" + e + ")")
                    .causedBy(e);
        }
    }

    private static RasterFile decode(Path file, FileDirectory directory, @Nullable String layer, RasterLimits limits) {
        long columns = number(file, directory.getImageWidth(), "width").longValue();
        long rows = number(file, directory.getImageHeight(), "height").longValue();
        limits.requireCells(file, columns, rows);
        GeoTiffPlacement placement = GeoTiffPlacement.of(file, directory);
        TiffBand band = new TiffBand(file, directory, (int) columns, (int) rows);
        double[] values = band.read(bandIndex(file, layer, directory.getSamplesPerPixel()));
        double south = placement.north() - rows * placement.height();
        Raster raster = new Raster(
                Raster.evenEdges(placement.west(), placement.width(), (int) columns),
                Raster.evenEdges(south, placement.height(), (int) rows),
                values);
        OptionalInt epsgCode = placement.epsgCode();
        return new RasterFile(file, raster, epsgCode, band.unit().or(placement::verticalUnit));
    }

    private static Number number(Path file, @Nullable Number value, String name) {
        if (value == null) {
            throw TiffDirectoryGuard.damaged(file, "a TIFF without " + name);
        }
        return value;
    }

    private static int bandIndex(Path file, @Nullable String layer, int bands) {
        String allowed = bands == 1 ? "the only band, 1" : "a band from 1 to " + bands + " as the layer";
        if (layer == null) {
            if (bands != 1) {
                throw SpatialFormatException.of(file, bands + " bands", allowed);
            }
            return 0;
        }
        if (!layer.matches("[0-9]{1,4}") || Integer.parseInt(layer) < 1 || Integer.parseInt(layer) > bands) {
            throw SpatialFormatException.of(file, "layer \"" + layer + "\" asked for", allowed);
        }
        return Integer.parseInt(layer) - 1;
    }
}

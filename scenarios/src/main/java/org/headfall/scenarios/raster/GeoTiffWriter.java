package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import mil.nga.tiff.FieldTagType;
import mil.nga.tiff.FieldType;
import mil.nga.tiff.FileDirectory;
import mil.nga.tiff.Rasters;
import mil.nga.tiff.TIFFImage;
import mil.nga.tiff.TiffWriter;
import mil.nga.tiff.util.TiffConstants;

/**
 * Writes a raster as GeoTIFF 1.0: single precision, north up, pixel is area, deflated, holes as the no-data value.
 *
 * <p>The file appears under its name only when it is whole.
 */
public final class GeoTiffWriter {
    /** The mark of a hole: the fill value that our NetCDF files use too. */
    public static final float NO_DATA = 9.96921e36f;

    /** The library keeps the packed length of a strip in 16 bits; deflate adds under 1,000 bytes to this at worst. */
    private static final int STRIP_BYTES = 64_000;

    private static final int USER_DEFINED = 32767;

    /**
     * Writes one raster.
     *
     * @param file the file, replaced if it exists
     * @param raster evenly spaced along x and along y
     * @param epsgCode code of the projected reference system, or nothing for a local grid in metres
     * @throws IllegalArgumentException if the cells differ in size, there are more than 16,000 columns or a value is
     *     too large for single precision
     * @throws IOException if the file cannot be written
     */
    public void write(Path file, Raster raster, OptionalInt epsgCode) throws IOException {
        FileDirectory directory = new FileDirectory();
        describeSamples(directory, raster);
        place(directory, raster, epsgCode);
        directory.setWriteRasters(samples(raster));
        byte[] bytes = TiffWriter.writeTiffToBytes(new TIFFImage(directory));
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.write(part, bytes);
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    }

    private static void describeSamples(FileDirectory directory, Raster raster) {
        directory.setImageWidth(raster.columns());
        directory.setImageHeight(raster.rows());
        directory.setBitsPerSample(Float.SIZE);
        directory.setSampleFormat(TiffConstants.SAMPLE_FORMAT_FLOAT);
        directory.setUnsignedIntegerEntryValue(FieldTagType.SamplesPerPixel, 1);
        directory.setPhotometricInterpretation(TiffConstants.PHOTOMETRIC_INTERPRETATION_BLACK_IS_ZERO);
        directory.setPlanarConfiguration(TiffConstants.PLANAR_CONFIGURATION_CHUNKY);
        directory.setCompression(TiffConstants.COMPRESSION_DEFLATE);
        int rowBytes = raster.columns() * Float.BYTES;
        if (rowBytes > STRIP_BYTES) {
            throw new IllegalArgumentException("a raster of " + raster.columns()
                    + " columns is too wide for a GeoTIFF of ours; allowed are up to " + STRIP_BYTES / Float.BYTES);
        }
        directory.setRowsPerStrip(Math.min(raster.rows(), STRIP_BYTES / rowBytes));
        directory.setStringEntryValue(FieldTagType.GDAL_NODATA, Float.toString(NO_DATA));
    }

    private static void place(FileDirectory directory, Raster raster, OptionalInt epsgCode) {
        double width = even(raster.evenWidth(), "x");
        double height = even(raster.evenHeight(), "y");
        directory.setModelPixelScale(List.of(width, height, 0.0));
        double west = raster.extent().west();
        double north = raster.extent().north();
        directory.setModelTiepoint(List.of(0.0, 0.0, 0.0, west, north, 0.0));
        directory.setUnsignedIntegerListEntryValue(FieldTagType.GeoKeyDirectory, geoKeys(epsgCode));
    }

    private static List<Integer> geoKeys(OptionalInt epsgCode) {
        List<Integer> keys = new ArrayList<>(Arrays.asList(1, 1, 0, 4));
        addKey(keys, GeoTiffPlacement.MODEL_TYPE, GeoTiffPlacement.MODEL_PROJECTED);
        addKey(keys, GeoTiffPlacement.RASTER_TYPE, GeoTiffPlacement.PIXEL_IS_AREA);
        addKey(keys, GeoTiffPlacement.PROJECTED_SYSTEM, epsgCode.orElse(USER_DEFINED));
        addKey(keys, GeoTiffPlacement.PROJECTED_LINEAR_UNIT, GeoTiffPlacement.METRE);
        return keys;
    }

    private static void addKey(List<Integer> keys, int key, int value) {
        keys.addAll(List.of(key, 0, 1, value));
    }

    private static double even(OptionalDouble length, String axis) {
        return length.orElseThrow(() -> new IllegalArgumentException(
                "a GeoTIFF needs equal cells along " + axis + "; resample the raster first"));
    }

    private static Rasters samples(Raster raster) {
        Rasters samples = new Rasters(raster.columns(), raster.rows(), 1, FieldType.FLOAT);
        for (int row = 0; row < raster.rows(); row++) {
            for (int column = 0; column < raster.columns(); column++) {
                double value = raster.value(column, raster.rows() - 1 - row);
                samples.setFirstPixelSample(column, row, Double.isNaN(value) ? NO_DATA : single(value));
            }
        }
        return samples;
    }

    private static float single(double value) {
        float single = (float) value;
        if (Float.isInfinite(single) || single == NO_DATA) {
            throw new IllegalArgumentException("the value " + value + " does not fit into a single-precision GeoTIFF");
        }
        return single;
    }
}

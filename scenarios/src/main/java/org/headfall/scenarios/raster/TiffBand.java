package org.headfall.scenarios.raster;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import mil.nga.tiff.FieldTagType;
import mil.nga.tiff.FieldType;
import mil.nga.tiff.FileDirectory;
import mil.nga.tiff.FileDirectoryEntry;
import mil.nga.tiff.Rasters;
import mil.nga.tiff.util.TiffConstants;
import org.headfall.scenarios.spatial.SpatialFormatException;

/** The values of one band of a TIFF, turned south to north, with holes, scale and offset applied. */
final class TiffBand {
    /** The code of deflate before it became part of the standard. */
    private static final int OLD_DEFLATE = 32946;

    private static final int TOP_LEFT = TiffConstants.ORIENTATION_TOP_ROW_LEFT_COLUMN;

    private final Path file;
    private final FileDirectory directory;
    private final int columns;
    private final int rows;
    private final GdalMetadata metadata;

    TiffBand(Path file, FileDirectory directory, int columns, int rows) {
        this.file = file;
        this.directory = directory;
        this.columns = columns;
        this.rows = rows;
        this.metadata = GdalMetadata.of(file, text(FieldTagType.GDAL_METADATA).orElse(""));
        completeRowsPerStrip();
    }

    /** The unit of the values as the file states it. */
    Optional<String> unit() {
        return metadata.unit();
    }

    double[] read(int band) {
        requireTopLeft();
        requireSampleType(band);
        requireBlocks(band);
        Rasters rasters = directory.readRasters(new int[] {band});
        ByteBuffer samples = rasters.getSampleValues()[0];
        samples.rewind();
        FieldType type = directory.getFieldTypeForSample(band);
        double noData = noData(type);
        double[] values = new double[columns * rows];
        for (int row = rows - 1; row >= 0; row--) {
            for (int column = 0; column < columns; column++) {
                double sample = sample(samples, type);
                boolean hole = AsciiGridDecoder.isNoData(sample, noData);
                values[row * columns + column] = hole ? Double.NaN : metadata.value(band, requireNotInfinite(sample));
            }
        }
        return values;
    }

    private double requireNotInfinite(double sample) {
        if (Double.isInfinite(sample)) {
            throw SpatialFormatException.of(file, "an infinite value", "finite values, or NaN for cells without data");
        }
        return sample;
    }

    private static double sample(ByteBuffer samples, FieldType type) {
        return switch (type) {
            case BYTE -> samples.get() & 0xff;
            case SBYTE -> samples.get();
            case SHORT -> samples.getShort() & 0xffff;
            case SSHORT -> samples.getShort();
            case LONG -> samples.getInt() & 0xffffffffL;
            case SLONG -> samples.getInt();
            case FLOAT -> samples.getFloat();
            case DOUBLE -> samples.getDouble();
            default -> throw new IllegalStateException("no sample is stored as " + type);
        };
    }

    /** The mark of a hole, rounded as the samples are; NaN if there is none. */
    private double noData(FieldType type) {
        String text = text(FieldTagType.GDAL_NODATA).orElse("nan").trim();
        try {
            double value = Double.parseDouble(text.replaceAll("(?i)^[-+]?nan$", "NaN"));
            return type == FieldType.FLOAT ? (float) value : value;
        } catch (NumberFormatException e) {
            throw SpatialFormatException.of(file, "the no-data value \"" + text + "\"", "a number")
                    .causedBy(e);
        }
    }

    private void requireTopLeft() {
        Integer orientation = directory.getIntegerEntryValue(FieldTagType.Orientation);
        if (orientation != null && orientation != TOP_LEFT) {
            throw SpatialFormatException.of(
                    file,
                    "TIFF orientation " + orientation,
                    "orientation 1: first row in the north, first column west");
        }
    }

    private void requireSampleType(int band) {
        List<Integer> bits = directory.getBitsPerSample();
        int bandBits = bits == null || bits.size() <= band ? 1 : bits.get(band);
        List<Integer> formats = directory.getSampleFormat();
        int format = formats == null || formats.size() <= band ? 1 : formats.get(band);
        boolean isFloat = format == TiffConstants.SAMPLE_FORMAT_FLOAT;
        boolean known = isFloat ? bandBits == 32 || bandBits == 64 : bandBits == 8 || bandBits == 16 || bandBits == 32;
        if (!known || format > TiffConstants.SAMPLE_FORMAT_FLOAT) {
            throw SpatialFormatException.of(
                    file,
                    bandBits + " bits a value of sample format " + format,
                    "integers of 8, 16 or 32 bits, or floating point of 32 or 64 bits");
        }
    }

    /** The strip height may be left out, or be larger than the image (TIFF 6.0, page 39). */
    private void completeRowsPerStrip() {
        Number rowsPerStrip = directory.getRowsPerStrip();
        if (!directory.isTiled() && (rowsPerStrip == null || rowsPerStrip.longValue() > rows)) {
            directory.setRowsPerStrip(rows);
        }
    }

    /** Refuses blocks that the library would read for ever or into too much memory. */
    private void requireBlocks(int band) {
        long width = directory.isTiled() ? directory.getTileWidth().longValue() : columns;
        long height = directory.isTiled()
                ? directory.getTileHeight().longValue()
                : directory.getRowsPerStrip().longValue();
        if (width < 1 || height < 1 || width * height > Math.max(1L << 24, (long) columns * rows)) {
            throw TiffDirectoryGuard.damaged(file, "TIFF blocks of " + width + " x " + height + " cells");
        }
        long blocks = ((columns + width - 1) / width) * ((rows + height - 1) / height);
        List<? extends Number> offsets = directory.isTiled() ? directory.getTileOffsets() : directory.getStripOffsets();
        List<Number> counts = directory.isTiled() ? directory.getTileByteCounts() : directory.getStripByteCounts();
        boolean planar = directory.getPlanarConfiguration() == TiffConstants.PLANAR_CONFIGURATION_PLANAR;
        long first = planar ? band * blocks : 0;
        if (offsets == null || counts == null || offsets.size() < first + blocks || counts.size() < first + blocks) {
            throw TiffDirectoryGuard.damaged(file, "a TIFF without all of its " + blocks + " blocks");
        }
        long blockBytes = width
                * height
                * directory.getBitsPerSample().stream().mapToInt(b -> b / 8).sum();
        for (int i = (int) first; i < first + blocks; i++) {
            requireBlock(offsets.get(i).longValue(), counts.get(i).longValue(), blockBytes);
        }
    }

    private void requireBlock(long offset, long count, long blockBytes) {
        if (offset == 0 || count == 0) {
            throw SpatialFormatException.of(
                    file, "a sparse TIFF, with blocks left out", "a TIFF with every block written");
        }
        if (offset + count > directory.getReader().byteLength()) {
            throw TiffDirectoryGuard.damaged(file, "a TIFF block beyond the end of the file");
        }
        Integer compression = directory.getCompression();
        if (compression != null && (compression == TiffConstants.COMPRESSION_DEFLATE || compression == OLD_DEFLATE)) {
            requireInflatable(offset, (int) count, blockBytes);
        }
    }

    /** The library's own loop never ends on a deflate stream that is cut short. */
    private void requireInflatable(long offset, int count, long blockBytes) {
        Inflater inflater = new Inflater();
        try {
            directory.getReader().setNextByte(offset);
            inflater.setInput(directory.getReader().readBytes(count));
            byte[] scratch = new byte[1 << 15];
            while (!inflater.finished()) {
                int inflated = inflater.inflate(scratch);
                if ((inflated == 0 && !inflater.finished()) || inflater.getBytesWritten() > blockBytes) {
                    throw TiffDirectoryGuard.damaged(file, "a compressed TIFF block of wrong length");
                }
            }
        } catch (DataFormatException e) {
            throw TiffDirectoryGuard.damaged(file, "a compressed TIFF block that cannot be unpacked")
                    .causedBy(e);
        } finally {
            inflater.end();
        }
    }

    private Optional<String> text(FieldTagType tag) {
        FileDirectoryEntry entry = directory.get(tag);
        if (entry == null) {
            return Optional.empty();
        }
        Object value = entry.getValues() instanceof List<?> list && !list.isEmpty() ? list.get(0) : entry.getValues();
        return Optional.of(String.valueOf(value).replace("\0", ""));
    }
}

package org.headfall.scenarios.raster;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * Holds the header of a classic NetCDF file against the length of the file (NetCDF Classic and 64-bit Offset Format,
 * OGC 11-165r2).
 *
 * <p>The library reads a file that was cut short as zeros, without an error, and reserves whatever memory a damaged
 * header asks for. Both are found here first.
 */
final class NetcdfClassicGuard {
    /** Bytes of a value by type 1 to 6: byte, char, short, int, float, double. */
    private static final int[] VALUE_BYTES = {0, 1, 1, 2, 4, 4, 8};

    private static final long STREAMING = 0xffffffffL;

    private final Path file;
    private final DataInputStream input;
    private final long fileBytes;
    private final List<Long> dimensions = new ArrayList<>();
    private long offsetBytes;
    private long records;
    private long recordBytes;
    private int recordVariables;
    private long firstRecordBytes;
    private long lastRecordByte;
    private long lastByte;

    private NetcdfClassicGuard(Path file, DataInputStream input, long fileBytes) {
        this.file = file;
        this.input = input;
        this.fileBytes = fileBytes;
    }

    /**
     * Checks the header.
     *
     * @throws SpatialFormatException if the header or the data it describes reach beyond the end of the file
     */
    static void requireWhole(Path file) throws IOException {
        try (DataInputStream input = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            new NetcdfClassicGuard(file, input, Files.size(file)).readHeader();
        } catch (EOFException e) {
            throw damaged(file, "a NetCDF header that is cut short").causedBy(e);
        }
    }

    /** The exception for a file that is not a whole NetCDF file. */
    static SpatialFormatException damaged(Path file, String found) {
        return SpatialFormatException.of(file, found, "a whole NetCDF file; it may be cut short or damaged");
    }

    private void readHeader() throws IOException {
        offsetBytes = (input.readInt() & 0xff) == 1 ? 4 : 8;
        records = unsigned();
        long dimensionCount = listLength();
        for (long i = 0; i < dimensionCount; i++) {
            skipName();
            dimensions.add(unsigned());
        }
        skipAttributes();
        long variables = listLength();
        for (long i = 0; i < variables; i++) {
            readVariable();
        }
        // Records of a single variable are packed without padding.
        long slab = recordVariables == 1 ? firstRecordBytes : recordBytes;
        boolean written = records > 0 && records != STREAMING && recordVariables > 0;
        long needed = Math.max(lastByte, written ? lastRecordByte + (records - 1) * slab : 0);
        if (needed > fileBytes || needed < 0) {
            throw damaged(file, "a file of " + fileBytes + " bytes that should have " + needed);
        }
    }

    private void readVariable() throws IOException {
        skipName();
        long rank = count(4);
        long values = 1;
        boolean record = false;
        for (long i = 0; i < rank; i++) {
            long dimension = unsigned();
            if (dimension >= dimensions.size()) {
                throw damaged(file, "a NetCDF variable with dimension number " + dimension);
            }
            long length = dimensions.get((int) dimension);
            record |= length == 0;
            values = Math.multiplyExact(values, Math.max(1, length));
        }
        skipAttributes();
        long bytes = Math.multiplyExact(values, valueBytes());
        unsigned();
        long begin = offsetBytes == 4 ? unsigned() : input.readLong();
        if (record) {
            recordVariables++;
            recordBytes += (bytes + 3) / 4 * 4;
            firstRecordBytes = bytes;
            lastRecordByte = Math.max(lastRecordByte, Math.addExact(begin, bytes));
        } else {
            lastByte = Math.max(lastByte, Math.addExact(begin, bytes));
        }
    }

    private void skipAttributes() throws IOException {
        long attributes = listLength();
        for (long i = 0; i < attributes; i++) {
            skipName();
            int bytes = valueBytes();
            skipPadded(count(bytes) * bytes);
        }
    }

    private int valueBytes() throws IOException {
        int type = input.readInt();
        if (type < 1 || type >= VALUE_BYTES.length) {
            throw damaged(file, "NetCDF type " + type);
        }
        return VALUE_BYTES[type];
    }

    private void skipName() throws IOException {
        skipPadded(count(1));
    }

    private long listLength() throws IOException {
        input.readInt();
        return count(4);
    }

    /** A number of things of a given size, which must fit into the file. */
    private long count(int bytesEach) throws IOException {
        long count = unsigned();
        if (count * bytesEach > fileBytes) {
            throw damaged(file, "a NetCDF header that promises " + count + " items in " + fileBytes + " bytes");
        }
        return count;
    }

    private long unsigned() throws IOException {
        return input.readInt() & 0xffffffffL;
    }

    private void skipPadded(long bytes) throws IOException {
        input.skipNBytes((bytes + 3) / 4 * 4);
    }
}

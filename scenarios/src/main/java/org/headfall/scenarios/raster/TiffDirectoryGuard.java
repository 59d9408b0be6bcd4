package org.headfall.scenarios.raster;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * Makes the bytes of a TIFF safe for the library that reads them.
 *
 * <p>The library follows the chain of directories wherever it leads and collects as many values as an entry claims.
 * A damaged file could so keep it busy for ever. Only the first directory holds the raster (the others are overviews
 * and masks), therefore the chain is cut after it and its claims are held against the length of the file.
 */
final class TiffDirectoryGuard {
    private static final int HEADER_BYTES = 8;
    private static final int ENTRY_BYTES = 12;
    /** Bytes of a value by field type 1 to 12 (TIFF 6.0, 1992, page 15 and 16). */
    private static final int[] VALUE_BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8};

    private final Path file;
    private final ByteBuffer bytes;

    private TiffDirectoryGuard(Path file, byte[] bytes) {
        this.file = file;
        ByteOrder order = bytes[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        this.bytes = ByteBuffer.wrap(bytes).order(order);
    }

    /**
     * Checks the first directory and cuts the chain after it.
     *
     * @param bytes the whole file; four bytes of it are set to zero
     * @throws SpatialFormatException if the directory reaches beyond the file
     */
    static void keepFirstDirectory(Path file, byte[] bytes) {
        if (bytes.length < HEADER_BYTES) {
            throw damaged(file, "a TIFF of " + bytes.length + " bytes");
        }
        new TiffDirectoryGuard(file, bytes).keepFirstDirectory();
    }

    /** The exception for a file that is not a whole TIFF. */
    static SpatialFormatException damaged(Path file, String found) {
        return SpatialFormatException.of(file, found, "a whole GeoTIFF; the file may be cut short or damaged");
    }

    private void keepFirstDirectory() {
        long start = bytes.getInt(4) & 0xffffffffL;
        if (start + 2 > bytes.capacity()) {
            throw damaged(file, "a TIFF directory at byte " + start + " of " + bytes.capacity());
        }
        int entries = bytes.getShort((int) start) & 0xffff;
        long end = start + 2 + (long) entries * ENTRY_BYTES;
        if (end + 4 > bytes.capacity()) {
            throw damaged(file, "a TIFF directory up to byte " + end + " of " + bytes.capacity());
        }
        for (int entry = 0; entry < entries; entry++) {
            checkEntry((int) start + 2 + entry * ENTRY_BYTES);
        }
        bytes.putInt((int) end, 0);
    }

    private void checkEntry(int position) {
        int tag = bytes.getShort(position) & 0xffff;
        int type = bytes.getShort(position + 2) & 0xffff;
        long count = bytes.getInt(position + 4) & 0xffffffffL;
        if (type == 0 || type >= VALUE_BYTES.length) {
            throw damaged(file, "TIFF tag " + tag + " of unknown field type " + type);
        }
        long length = count * VALUE_BYTES[type];
        long offset = length <= 4 ? position + 8L : bytes.getInt(position + 8) & 0xffffffffL;
        if (offset + length > bytes.capacity()) {
            throw damaged(file, "TIFF tag " + tag + " with values beyond the end of the file");
        }
    }
}

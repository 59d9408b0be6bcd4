package org.headfall.scenarios.sweep.figures;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/**
 * Cells in which limits are crossed, packed for a store: for each limit the number of bytes and a bit a cell, all of it
 * deflated (RFC 1950). Areas hang together, so that a map of 65,000 cells takes some hundred bytes.
 */
public final class CrossedCells {

    private CrossedCells() {}

    /**
     * Packs maps.
     *
     * @param maps cells by limit
     * @return the bytes; none for no maps
     */
    public static byte[] pack(List<BitSet> maps) {
        if (maps.isEmpty()) {
            return new byte[0];
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream packed = new DataOutputStream(new DeflaterOutputStream(bytes))) {
            packed.writeInt(maps.size());
            for (BitSet map : maps) {
                byte[] bits = map.toByteArray();
                packed.writeInt(bits.length);
                packed.write(bits);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("memory cannot be written", impossible);
        }
        return bytes.toByteArray();
    }

    /**
     * Unpacks maps.
     *
     * @param packed what {@link #pack} gave
     * @return the cells by limit; none of no bytes
     * @throws IOException if these are other bytes
     */
    public static List<BitSet> unpack(byte[] packed) throws IOException {
        List<BitSet> maps = new ArrayList<>();
        if (packed.length > 0) {
            try (DataInputStream bytes =
                    new DataInputStream(new InflaterInputStream(new ByteArrayInputStream(packed)))) {
                int count = bytes.readInt();
                for (int i = 0; i < count; i++) {
                    maps.add(BitSet.valueOf(bytes.readNBytes(bytes.readInt())));
                }
            }
        }
        return maps;
    }
}

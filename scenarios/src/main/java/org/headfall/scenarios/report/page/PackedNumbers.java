package org.headfall.scenarios.report.page;

import java.io.ByteArrayOutputStream;
import java.util.Base64;
import java.util.zip.Deflater;

/**
 * Packs tables of numbers into short text for the page. Values are rounded to a multiple of a quantum; each is stored as
 * its difference from the value before it in its row (the first of a row from the first of the row before), and less the
 * same difference in the table before. The differences, mostly small, are written with the sign in the lowest bit, seven
 * bits a byte, then deflated (RFC 1950) and written in base64. Zero stands for a missing value, which leaves the
 * prediction as it was. The reading side is {@code report-packed.js}.
 */
public final class PackedNumbers {

    private static final long MISSING = Long.MIN_VALUE;

    private final double quantum;
    private final int rowLength;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private long[] previous = new long[0];

    /**
     * Begins a sequence of tables of one shape.
     *
     * @param quantum what values are rounded to
     * @param rowLength values in a row
     */
    public PackedNumbers(double quantum, int rowLength) {
        this.quantum = quantum;
        this.rowLength = Math.max(1, rowLength);
    }

    /** Adds a table, row by row; NaN is a missing value. */
    public PackedNumbers add(float[] values) {
        double[] copy = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            copy[i] = values[i];
        }
        return add(copy);
    }

    /** Adds a table, row by row; NaN is a missing value. */
    public PackedNumbers add(double[] values) {
        long[] units = new long[values.length];
        for (int i = 0; i < values.length; i++) {
            units[i] = Double.isNaN(values[i]) ? MISSING : Math.round(values[i] / quantum);
        }
        long left = 0;
        long rowStart = 0;
        for (int i = 0; i < units.length; i++) {
            boolean firstOfRow = i % rowLength == 0;
            if (firstOfRow) {
                left = rowStart;
            }
            if (units[i] == MISSING) {
                bytes.write(0);
                continue;
            }
            long change = units[i] - earlier(i);
            writeDifference(change - left);
            left = change;
            rowStart = firstOfRow ? change : rowStart;
        }
        previous = units;
        return this;
    }

    private long earlier(int i) {
        return i < previous.length && previous[i] != MISSING ? previous[i] : 0;
    }

    private void writeDifference(long difference) {
        long code = ((difference << 1) ^ (difference >> 63)) + 1;
        while (code >= 128) {
            bytes.write((int) (code & 127) | 128);
            code >>>= 7;
        }
        bytes.write((int) code);
    }

    /** The tables so far, deflated, in base64. */
    public String text() {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        deflater.setInput(bytes.toByteArray());
        deflater.finish();
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        byte[] buffer = new byte[1 << 16];
        while (!deflater.finished()) {
            packed.write(buffer, 0, deflater.deflate(buffer));
        }
        deflater.end();
        return Base64.getEncoder().encodeToString(packed.toByteArray());
    }
}

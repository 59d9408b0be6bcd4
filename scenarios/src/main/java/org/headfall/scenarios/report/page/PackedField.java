package org.headfall.scenarios.report.page;

import java.io.ByteArrayOutputStream;
import java.util.Base64;

/**
 * Packs fields and series into short text for the page. Values are rounded to a multiple of a quantum; each is stored
 * as its difference from the value before it (the first of a row from the first of the row before), and less the same
 * difference at the previous date. The differences, mostly small, are written with the sign in the lowest bit, seven
 * bits a byte, in base64. Zero stands for a missing value, which leaves the prediction as it was. The reading side is
 * {@code unpack} in {@code report-data.js}.
 */
final class PackedField {

    private static final int MISSING = Integer.MIN_VALUE;

    private final double quantum;
    private final int rowLength;
    private int[] previous;

    /**
     * Begins a sequence of fields.
     *
     * @param quantum what values are rounded to
     * @param rowLength values in a row
     */
    PackedField(double quantum, int rowLength) {
        this.quantum = quantum;
        this.rowLength = rowLength;
        this.previous = new int[0];
    }

    /**
     * Packs the field of the next date.
     *
     * @param values values of the cells, NaN where missing
     * @return base64 text
     */
    String next(float[] values) {
        int[] units = new int[values.length];
        for (int i = 0; i < values.length; i++) {
            units[i] = Float.isNaN(values[i]) ? MISSING : (int) Math.round(values[i] / quantum);
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(values.length * 5 / 4 + 16);
        int left = 0;
        int rowStart = 0;
        for (int i = 0; i < units.length; i++) {
            boolean firstOfRow = i % rowLength == 0;
            if (units[i] == MISSING) {
                bytes.write(0);
            } else {
                int change = units[i] - earlier(i);
                writeDifference(bytes, change - (firstOfRow ? rowStart : left));
                left = change;
                rowStart = firstOfRow ? change : rowStart;
            }
            left = firstOfRow && units[i] == MISSING ? rowStart : left;
        }
        previous = units;
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }

    private int earlier(int i) {
        return i < previous.length && previous[i] != MISSING ? previous[i] : 0;
    }

    private static void writeDifference(ByteArrayOutputStream bytes, int difference) {
        long code = (((long) difference << 1) ^ ((long) difference >> 63)) + 1;
        while (code >= 128) {
            bytes.write((int) (code & 127) | 128);
            code >>>= 7;
        }
        bytes.write((int) code);
    }
}

package org.headfall.scenarios.responses;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.TreeSet;
import org.headfall.solver.schedule.Schedule;

/** SHA-256 of numbers and words, to the last bit. */
final class Digest {

    private static final int NUMBERS_AT_ONCE = 1024;

    /** Bits that no number of a field has: those of a NaN that arithmetic never makes. */
    private static final long REPEATED = 0x7ff8_5265_7065_6174L;

    private final MessageDigest digest;
    private final ByteBuffer buffer = ByteBuffer.allocate(NUMBERS_AT_ONCE * Double.BYTES);

    Digest() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Adds a field, what is alike in a row as a number and how often; negative zero counts as zero. */
    Digest numbers(double... values) {
        int next = 0;
        while (next < values.length) {
            double value = values[next] + 0.0;
            int first = next++;
            while (next < values.length && values[next] == value) {
                next++;
            }
            add(value);
            if (next - first > 1) {
                addRepeated(next - first);
            }
        }
        drain();
        return this;
    }

    private void add(double value) {
        if (buffer.remaining() < Double.BYTES) {
            drain();
        }
        buffer.putDouble(value);
    }

    private void addRepeated(int times) {
        if (buffer.remaining() < 2 * Long.BYTES) {
            drain();
        }
        buffer.putLong(REPEATED).putLong(times);
    }

    private void drain() {
        buffer.flip();
        digest.update(buffer);
        buffer.clear();
    }

    Digest flags(boolean[] values) {
        byte[] bytes = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            bytes[i] = (byte) (values[i] ? 1 : 0);
        }
        digest.update(bytes);
        return this;
    }

    /** Adds a word with its length, so that no two rows of words look alike. */
    Digest word(String word) {
        byte[] bytes = word.getBytes(StandardCharsets.UTF_8);
        numbers(bytes.length);
        digest.update(bytes);
        return this;
    }

    /** Adds the values before and after every change. */
    Digest schedule(Schedule schedule) {
        TreeSet<Double> days = new TreeSet<>();
        days.add(0.0);
        for (double[] some : new double[][] {schedule.jumps(), schedule.bends()}) {
            for (double day : some) {
                days.add(day);
            }
        }
        for (double day : days) {
            numbers(day, schedule.at(Math.nextDown(day)), schedule.at(day));
        }
        return word("end");
    }

    String hex() {
        return HexFormat.of().formatHex(digest.digest());
    }
}

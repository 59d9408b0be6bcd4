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

    private final MessageDigest digest;
    private final ByteBuffer buffer = ByteBuffer.allocate(NUMBERS_AT_ONCE * Double.BYTES);

    Digest() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Adds a field; negative zero counts as zero. */
    Digest numbers(double... values) {
        for (double value : values) {
            if (!buffer.hasRemaining()) {
                drain();
            }
            buffer.putDouble(value + 0.0);
        }
        drain();
        return this;
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

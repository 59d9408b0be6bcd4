package org.headfall.scenarios.document;

import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/** Tells files that are no UTF-8 text at all, so that nobody is told of a misplaced comma in a zip archive. */
public final class TextEncoding {
    /** So many bytes from the start of a file are enough to tell. */
    public static final int ENOUGH = 8192;

    private static final String ALLOWED = "text saved as UTF-8";

    private TextEncoding() {}

    /**
     * What is wrong with the start of a file, or null if it may be UTF-8 text.
     *
     * @param bytes bytes from the start of the file
     * @param length how many of them are from the file
     */
    public static @Nullable Finding fault(byte[] bytes, int length) {
        if (isUtf16(bytes, length)) {
            return Finding.of(ProblemKind.ENCODING, "text in UTF-16", ALLOWED);
        }
        int looked = Math.min(length, ENOUGH);
        for (int i = 0; i < looked; i++) {
            if (bytes[i] == 0) {
                return Finding.of(ProblemKind.ENCODING, "binary data", ALLOWED);
            }
        }
        return null;
    }

    /** By its byte order mark, or by the zeros beside the Latin letters of its first word. */
    private static boolean isUtf16(byte[] bytes, int length) {
        if (length < 4) {
            return false;
        }
        boolean marked = (bytes[0] == (byte) 0xff && bytes[1] == (byte) 0xfe)
                || (bytes[0] == (byte) 0xfe && bytes[1] == (byte) 0xff);
        boolean lowFirst = bytes[0] > 0 && bytes[1] == 0 && bytes[2] > 0 && bytes[3] == 0;
        boolean highFirst = bytes[0] == 0 && bytes[1] > 0 && bytes[2] == 0 && bytes[3] > 0;
        return marked || lowFirst || highFirst;
    }
}

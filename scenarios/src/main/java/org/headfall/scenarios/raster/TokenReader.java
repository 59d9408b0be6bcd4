package org.headfall.scenarios.raster;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * Splits a text file into words at white space, one at a time, and knows where each stood.
 *
 * <p>A file of any size passes through one small buffer.
 */
final class TokenReader {
    private static final int LONGEST_TOKEN = 64;
    private static final int END = -1;

    private final Path file;
    private final InputStream stream;
    private final byte[] buffer = new byte[1 << 16];
    private final byte[] token = new byte[LONGEST_TOKEN];
    private int filled;
    private int next;
    private int length;
    private int line = 1;
    private int column;
    private int tokenLine = 1;
    private int tokenColumn = 1;

    TokenReader(Path file, InputStream stream) {
        this.file = file;
        this.stream = stream;
    }

    /**
     * Moves to the next word.
     *
     * @return false at the end of the file
     */
    boolean advance() throws IOException {
        int read = read();
        while (isSpace(read)) {
            read = read();
        }
        length = 0;
        tokenLine = line;
        tokenColumn = column;
        while (read != END && !isSpace(read)) {
            append(read);
            read = read();
        }
        return length > 0;
    }

    String text() {
        return new String(token, 0, length, StandardCharsets.ISO_8859_1);
    }

    int line() {
        return tokenLine;
    }

    SpatialFormatException fault(String found, String allowed) {
        return SpatialFormatException.at(file, tokenLine, tokenColumn, found, allowed);
    }

    /** The word in quotes, fit for a message even if the file is not text. */
    String quoted() {
        return "\"" + text().replaceAll("[^\\x20-\\x7e]", "?") + "\"";
    }

    private void append(int read) {
        if (length == LONGEST_TOKEN) {
            throw fault("a word longer than " + LONGEST_TOKEN + " characters: " + quoted(), "numbers and keywords");
        }
        token[length++] = (byte) read;
    }

    private int read() throws IOException {
        if (next == filled) {
            filled = Math.max(0, stream.read(buffer, 0, buffer.length));
            next = 0;
            if (filled == 0) {
                return END;
            }
            skipByteOrderMark();
        }
        int read = buffer[next++] & 0xff;
        if (read == '\n') {
            line++;
            column = 0;
        } else {
            column++;
        }
        return read;
    }

    private void skipByteOrderMark() {
        boolean atStart = line == 1 && column == 0;
        if (atStart && filled >= 3 && (buffer[0] & 0xff) == 0xef && (buffer[1] & 0xff) == 0xbb) {
            Arrays.fill(buffer, 0, 3, (byte) ' ');
        }
    }

    private static boolean isSpace(int read) {
        return read == ' ' || read == '\n' || read == '\t' || read == '\r';
    }
}

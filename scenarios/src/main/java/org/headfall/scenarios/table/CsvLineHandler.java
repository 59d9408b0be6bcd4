package org.headfall.scenarios.table;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Gathers the values of a record and follows line and column through quotes and line breaks within them. */
final class CsvLineHandler extends AbstractBaseCsvCallbackHandler<CsvLine> {
    private final String file;
    private final List<String> values = new ArrayList<>();
    private int[] lines = new int[16];
    private int[] columns = new int[16];
    private int line;
    private int column;

    CsvLineHandler(String file) {
        this.file = file;
    }

    @Override
    protected void handleBegin(long startingLineNumber) {
        values.clear();
        line = (int) Math.min(startingLineNumber, Integer.MAX_VALUE);
        column = 1;
    }

    @Override
    protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
        if (index == lines.length) {
            lines = Arrays.copyOf(lines, 2 * index);
            columns = Arrays.copyOf(columns, 2 * index);
        }
        if (index > 0) {
            column++; // the comma
        }
        lines[index] = line;
        columns[index] = column;
        column += quoted ? 1 : 0;
        advance(buffer, offset, length);
        column += quoted ? 1 : 0;
        values.add(new String(buffer, offset, length));
    }

    private void advance(char[] buffer, int offset, int length) {
        for (int i = offset; i < offset + length; i++) {
            char letter = buffer[i];
            boolean lineEnds =
                    letter == '\n' || (letter == '\r' && (i + 1 == offset + length || buffer[i + 1] != '\n'));
            if (lineEnds) {
                line++;
                column = 1;
            } else if (letter == '"') {
                column += 2; // a quote within quotes is written twice
            } else if (!Character.isLowSurrogate(letter)) {
                column++;
            }
        }
    }

    @Override
    protected void handleEmpty() {
        values.clear();
    }

    @Override
    protected @Nullable CsvLine buildRecord() {
        int size = values.size();
        return new CsvLine(
                file,
                values.toArray(new String[0]),
                Arrays.copyOf(lines, size),
                Arrays.copyOf(columns, size),
                line,
                column);
    }
}

package org.headfall.scenarios.rerun;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.function.UnaryOperator;

/** Compares two tables cell by cell. */
final class TableComparison {

    /** Cells at the beginning of a line that tell a reader which line it is. */
    private static final int NAMING = 2;

    private final Tally tally = new Tally();
    private final UnaryOperator<String> versionNow;

    /**
     * A comparison.
     *
     * @param versionNow puts the version of the program that runs in place of that which made the results
     */
    TableComparison(UnaryOperator<String> versionNow) {
        this.versionNow = versionNow;
    }

    /** Compares them; a line that only one of them has differs as a whole. */
    FileComparison of(Path before, Path now) throws IOException {
        try (CsvReader<CsvRecord> linesBefore =
                        UnreadableException.ifNotRead(() -> CsvReader.builder().ofCsvRecord(before));
                CsvReader<CsvRecord> linesNow = CsvReader.builder().ofCsvRecord(now)) {
            compare(linesBefore.iterator(), linesNow.iterator());
        }
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compare(Iterator<CsvRecord> before, Iterator<CsvRecord> now) throws IOException {
        List<String> header = List.of();
        while (UnreadableException.ifNotRead(before::hasNext) && now.hasNext()) {
            CsvRecord line = UnreadableException.ifNotRead(before::next);
            if (header.isEmpty()) {
                header = line.getFields();
            }
            compare(header, line, now.next());
        }
        long linesBefore = UnreadableException.ifNotRead(() -> remaining(before));
        long linesNow = remaining(now);
        if (linesBefore != linesNow) {
            tally.differs(
                    "lines at the end that only one of the tables has", String.valueOf(linesBefore), "" + linesNow);
        }
    }

    private void compare(List<String> header, CsvRecord before, CsvRecord now) {
        if (before.getFieldCount() != now.getFieldCount()) {
            tally.differs(
                    where(before) + ", cells",
                    String.valueOf(before.getFieldCount()),
                    String.valueOf(now.getFieldCount()));
            return;
        }
        for (int i = 0; i < before.getFieldCount(); i++) {
            int column = i;
            tally.texts(
                    versionNow.apply(before.getField(i)),
                    now.getField(i),
                    () -> where(before) + ", "
                            + (column < header.size() ? header.get(column) : "cell " + (column + 1)));
        }
    }

    private static String where(CsvRecord line) {
        List<String> cells = line.getFields();
        String names = String.join(
                ", ",
                cells.subList(0, Math.min(NAMING, cells.size())).stream()
                        .filter(cell -> !cell.isBlank())
                        .toList());
        return "line " + line.getStartingLineNumber() + " (" + names + ")";
    }

    private static long remaining(Iterator<CsvRecord> lines) {
        long count = 0;
        while (lines.hasNext()) {
            lines.next();
            count++;
        }
        return count;
    }
}

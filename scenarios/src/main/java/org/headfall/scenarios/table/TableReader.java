package org.headfall.scenarios.table;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.TextEncoding;
import org.headfall.scenarios.problem.FileFailure;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a CSV file one by one. */
public final class TableReader {
    private static final long MOST_BYTES = 500_000_000;
    private static final Pattern WHOLE_NUMBER = Pattern.compile("[+-]?\\d+");

    private final TableFormat format;
    private final Problems problems;

    /**
     * Makes a reader for tables of one format.
     *
     * @param format the columns of the table
     * @param problems receives what is wrong
     */
    public TableReader(TableFormat format, Problems problems) {
        this.format = format;
        this.problems = problems;
    }

    /**
     * Reads a file and hands on each row without a problem. Rows with problems are reported and left out; a file
     * without a single row is a problem.
     *
     * @param path the file
     * @param name its name in messages
     * @param rows receives the rows in order
     */
    public void read(Path path, String name, Consumer<TableRow> rows) {
        read(path, name, rows, row -> {});
    }

    /**
     * Reads a file as above, and hands on rows with problems too, for those who want to know what they name.
     *
     * @param path the file
     * @param name its name in messages
     * @param rows receives the rows without a problem in order
     * @param unsound receives the others, whose cells have not been checked and may be those of another column
     * @return whether the file has the columns it needs; if not, no row has been read
     */
    public boolean read(Path path, String name, Consumer<TableRow> rows, Consumer<TableRow> unsound) {
        int line = 1;
        @Nullable Finding fault = faultOfFile(path);
        if (fault != null) {
            problems.add(Place.ofFile(name), name, fault);
            return false;
        }
        try (CsvReader<CsvLine> reader = open(path, name);
                CloseableIterator<CsvLine> lines = reader.iterator()) {
            if (!lines.hasNext()) {
                refuse(Place.ofFile(name), ProblemKind.NO_ROWS, "an empty file", "a header and at least one row");
                return false;
            }
            CsvLine header = lines.next();
            @Nullable Map<String, TableRow.Position> positions = new TableHeader(format, problems).read(header);
            line = header.endLine();
            if (positions == null) {
                return false;
            }
            long count = 0;
            while (lines.hasNext()) {
                CsvLine next = lines.next();
                line = next.endLine();
                count++;
                if (count > format.mostRows()) {
                    refuse(
                            next.place(0),
                            ProblemKind.TOO_MANY_ROWS,
                            "more rows",
                            "at most " + format.mostRows() + " rows");
                    return false;
                }
                handOn(next, header.size(), positions, rows, unsound);
            }
            if (count == 0) {
                refuse(header.place(0), ProblemKind.NO_ROWS, "a header alone", "a header and at least one row");
            }
            return true;
        } catch (CsvParseException broken) {
            refuse(
                    new Place(name, line, 0),
                    ProblemKind.SYNTAX,
                    reason(broken),
                    "comma separated values, quotes in pairs");
            return false;
        } catch (IOException unreadable) {
            return refuseUnreadable(new Place(name, line, 0), unreadable);
        } catch (UncheckedIOException unreadable) {
            return refuseUnreadable(new Place(name, line, 0), Objects.requireNonNull(unreadable.getCause()));
        }
    }

    private boolean refuseUnreadable(Place place, IOException unreadable) {
        refuse(place, ProblemKind.FILE_UNREADABLE, FileFailure.reason(unreadable), "a file that can be read");
        return false;
    }

    /** What is wrong with a file as a whole, seen without reading it. */
    private static @Nullable Finding faultOfFile(Path path) {
        try {
            long bytes = Files.size(path);
            if (bytes > MOST_BYTES) {
                String found = "a file of " + bytes / 1_000_000 + " MB";
                String allowed = "tables up to " + MOST_BYTES / 1_000_000 + " MB; leave out what is not needed";
                return Finding.of(ProblemKind.FILE_TOO_LARGE, found, allowed);
            }
            try (InputStream file = Files.newInputStream(path)) {
                byte[] start = file.readNBytes(TextEncoding.ENOUGH);
                return TextEncoding.fault(start, start.length);
            }
        } catch (IOException unreadable) {
            return Finding.of(ProblemKind.FILE_UNREADABLE, FileFailure.reason(unreadable), "a file that can be read");
        }
    }

    private static CsvReader<CsvLine> open(Path path, String name) throws IOException {
        return CsvReader.builder()
                .commentStrategy(CommentStrategy.SKIP)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .detectBomHeader(true)
                .build(new CsvLineHandler(name), path, StandardCharsets.UTF_8);
    }

    private static String reason(CsvParseException broken) {
        @Nullable Throwable cause = broken.getCause();
        @Nullable String message = cause == null ? broken.getMessage() : cause.getMessage();
        return message == null ? "a broken record" : message;
    }

    private void handOn(
            CsvLine line,
            int expected,
            Map<String, TableRow.Position> positions,
            Consumer<TableRow> rows,
            Consumer<TableRow> unsound) {
        TableRow row = new TableRow(line, positions);
        if (line.size() != expected) {
            reportRagged(line, expected);
            unsound.accept(row);
        } else if (row.check(problems)) {
            rows.accept(row);
        } else {
            unsound.accept(row);
        }
    }

    private void reportRagged(CsvLine line, int expected) {
        String allowed = expected + " values, as in the header";
        boolean decimalComma = line.size() > expected && hasNeighbouringNumbers(line);
        String hint = decimalComma ? "; if a comma stands before decimals, write a point" : "";
        for (String value : line.values()) {
            hint = TableRow.goesOn(value) ? "; a quote that is opened has to be closed in the same line" : hint;
        }
        refuse(line.place(expected), ProblemKind.RAGGED_ROW, line.size() + " values", allowed + hint);
    }

    private static boolean hasNeighbouringNumbers(CsvLine line) {
        for (int i = 1; i < line.size(); i++) {
            boolean digitsBefore =
                    WHOLE_NUMBER.matcher(line.values()[i - 1].strip()).matches();
            if (digitsBefore && WHOLE_NUMBER.matcher(line.values()[i]).matches()) {
                return true;
            }
        }
        return false;
    }

    private void refuse(Place place, ProblemKind kind, String found, String allowed) {
        problems.add(place, place.file(), Finding.of(kind, found, allowed));
    }
}

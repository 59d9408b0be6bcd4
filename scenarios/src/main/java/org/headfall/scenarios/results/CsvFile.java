package org.headfall.scenarios.results;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;

/**
 * A table as CSV (RFC 4180): UTF-8, comma, a header line, point decimals whatever the locale. A text that a spreadsheet
 * would take for a formula begins with an apostrophe, unless it is a number with a unit. The file appears under its name when it is whole.
 */
public final class CsvFile implements AutoCloseable {

    private final Path target;
    private final Path part;
    private final CsvWriter writer;
    private final int columns;
    private boolean open = true;

    /**
     * Begins a file with its header.
     *
     * @param target final path; while it is written it is called {@code target.part}
     * @param header names of the columns, with units
     * @throws IOException if it cannot be written
     */
    public CsvFile(Path target, List<String> header) throws IOException {
        this.target = target;
        part = target.resolveSibling(target.getFileName() + ".part");
        columns = header.size();
        writer = CsvWriter.builder()
                .lineDelimiter(LineDelimiter.CRLF)
                .build(Files.newOutputStream(part), StandardCharsets.UTF_8);
        writer.writeRecord(header);
    }

    /**
     * Writes a whole file, a line for each item.
     *
     * @param target final path
     * @param header names of the columns, with units
     * @param items what there is a line of
     * @param line the line of an item
     * @param <T> kind of the items
     * @throws IOException if it cannot be written
     */
    public static <T> void write(Path target, List<String> header, Collection<T> items, Function<T, CsvLineCells> line)
            throws IOException {
        try (CsvFile file = new CsvFile(target, header)) {
            for (T item : items) {
                file.line(line.apply(item));
            }
            file.complete();
        }
    }

    /**
     * Writes a line.
     *
     * @param cells its cells, one a column
     * @throws IOException if it cannot be written
     */
    public void line(CsvLineCells cells) throws IOException {
        List<String> texts = cells.texts();
        if (texts.size() != columns) {
            throw new IllegalArgumentException(
                    "a line of " + texts.size() + " cells does not fit " + columns + " columns");
        }
        writer.writeRecord(texts);
    }

    /**
     * Closes the file and gives it its final name.
     *
     * @throws IOException if that fails
     */
    public void complete() throws IOException {
        close();
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    }

    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            writer.close();
        }
    }
}

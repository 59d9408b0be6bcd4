package org.headfall.validation.table;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A table of published or recomputed values in the resources; its sources stand in the comments of the file. */
public final class ReferenceTable {

    private ReferenceTable() {}

    /**
     * Reads a table.
     *
     * @param file its name
     * @return the rows, in order, fields by the names of the header
     */
    public static List<NamedCsvRecord> rows(String file) {
        try (InputStream stream = ReferenceTable.class.getResourceAsStream("/reference/" + file)) {
            if (stream == null) {
                throw new IllegalStateException("the program is incomplete: table " + file + " is missing");
            }
            InputStreamReader reader = new InputStreamReader(stream, StandardCharsets.UTF_8);
            try (CsvReader<NamedCsvRecord> csv =
                    CsvReader.builder().commentStrategy(CommentStrategy.SKIP).ofNamedCsvRecord(reader)) {
                return csv.stream().toList();
            }
        } catch (IOException failure) {
            throw new UncheckedIOException("table " + file + " cannot be read", failure);
        }
    }

    /**
     * Reads a table that must have a known number of rows, so that none is lost unnoticed.
     *
     * @param file its name
     * @param expected number of rows
     * @return the rows
     */
    public static List<NamedCsvRecord> rows(String file, int expected) {
        List<NamedCsvRecord> rows = rows(file);
        if (rows.size() != expected) {
            throw new IllegalStateException(
                    "table " + file + " has " + rows.size() + " rows, " + expected + " are expected");
        }
        return rows;
    }

    /** A field as a number. */
    public static double number(NamedCsvRecord row, String column) {
        return Double.parseDouble(row.getField(column));
    }
}

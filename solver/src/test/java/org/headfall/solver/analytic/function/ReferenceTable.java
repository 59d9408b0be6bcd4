package org.headfall.solver.analytic.function;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of published and recomputed values in the test resources; its sources stand in the comments of the file. */
public final class ReferenceTable {
    private final String name;
    private final List<String> columns;
    private final List<Row> rows;

    private ReferenceTable(String name, List<String> lines) {
        this.name = name;
        columns = Arrays.asList(lines.get(0).split(",", -1));
        rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            rows.add(new Row(Arrays.asList(line.split(",", -1))));
        }
    }

    /** Reads a table, which must have the given number of rows so that none is lost unnoticed. */
    public static ReferenceTable read(String file, int expectedRows) {
        try (var stream = ReferenceTable.class.getResourceAsStream("/reference/" + file)) {
            assertNotNull(stream, file);
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            List<String> lines = text.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .toList();
            ReferenceTable table = new ReferenceTable(file, lines);
            assertEquals(expectedRows, table.rows.size(), "rows of " + file);
            return table;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public List<Row> rows() {
        return rows;
    }

    /** One row of the table. */
    public final class Row {
        private final List<String> fields;

        private Row(List<String> fields) {
            this.fields = fields;
        }

        public String text(String column) {
            int index = columns.indexOf(column);
            assertEquals(true, index >= 0, () -> name + " has no column " + column);
            return index < fields.size() ? fields.get(index) : "";
        }

        /** The entries of a field that holds several, separated by semicolons; none if it is empty. */
        public List<String> entries(String column) {
            String field = text(column);
            return field.isEmpty() ? List.of() : Arrays.asList(field.split(";", -1));
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        @Override
        public String toString() {
            return name + " " + fields;
        }
    }

    /** Half a unit of the last digit of a printed number, with a little room for the binary fraction. */
    public static double halfUnitOfLastDigit(String printed) {
        return 0.5 * (1 + 1e-9) * new BigDecimal(printed).ulp().doubleValue();
    }

    /** Asserts agreement relative to the expected value. */
    public static void assertRelative(double expected, double actual, double tolerance, Object where) {
        assertEquals(expected, actual, Math.abs(expected) * tolerance, () -> String.valueOf(where));
    }

    /** Asserts that a value rounds to the recomputed digits of a table. */
    public static void assertRounds(String digits, double actual, Object where) {
        assertEquals(Double.parseDouble(digits), actual, halfUnitOfLastDigit(digits), () -> String.valueOf(where));
    }
}

package org.headfall.scenarios.table;

import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.jspecify.annotations.Nullable;

/** One row of a table; every value has been checked against its column. */
public final class TableRow {
    private static final char REPLACEMENT = '\uFFFD';

    private final CsvLine line;
    private final Map<String, Position> positions;

    /**
     * Where a column stands in the file.
     *
     * @param column the column
     * @param index its number in the file, from 0
     * @param factor what turns its numbers into metres and days; NaN if the header gives no unit
     * @param unit the unit as typed in the header; empty if none
     */
    record Position(TableColumn column, int index, double factor, String unit) {}

    TableRow(CsvLine line, Map<String, Position> positions) {
        this.line = line;
        this.positions = positions;
    }

    /** Checks every value; false after problems have been reported. */
    boolean check(Problems problems) {
        boolean sound = true;
        for (Position position : positions.values()) {
            @Nullable Finding finding = check(position);
            if (finding != null) {
                problems.add(place(position), position.column().title(), finding);
                sound = false;
            }
        }
        return sound;
    }

    private @Nullable Finding check(Position position) {
        String text = cell(position);
        if (text.isEmpty()) {
            return position.column().required()
                    ? Finding.of(ProblemKind.EMPTY_VALUE, "nothing", "a value in every row")
                    : null;
        }
        if (isGarbled(position)) {
            return Finding.of(ProblemKind.ENCODING, text, "text saved as UTF-8");
        }
        if (goesOn(text) && !(position.column().content() instanceof TableColumn.Text)) {
            return Finding.of(
                    ProblemKind.SYNTAX,
                    "a quote that is not closed in its line",
                    "values in one line, each quote closed where it was opened");
        }
        TableColumn.Content content = position.column().content();
        if (content instanceof TableColumn.Date) {
            return ValueReader.parseDate(text) == null ? ValueReader.notADate(text) : null;
        }
        if (content instanceof TableColumn.Word word) {
            return word.words().contains(text) ? null : ValueReader.notAChoice(text, word.words());
        }
        return content instanceof TableColumn.Measure measure ? check(position, text, measure) : null;
    }

    /**
     * Whether a cell holds bytes that are not UTF-8.
     *
     * @param column name of a column that is in the file
     */
    public boolean isGarbled(String column) {
        @Nullable Position position = positions.get(column);
        return position != null && isGarbled(position);
    }

    private boolean isGarbled(Position position) {
        return cell(position).indexOf(REPLACEMENT) >= 0;
    }

    /** Whether a value goes on in the next line, as happens when a quote is left open. */
    static boolean goesOn(String text) {
        return text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0;
    }

    private static @Nullable Finding check(Position position, String text, TableColumn.Measure measure) {
        try {
            double value = measured(position, text, measure.dimension());
            Quantity found = new Quantity(withUnit(position, text), measure.dimension(), value);
            return measure.range().contains(value)
                    ? null
                    : Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            found.text(),
                            measure.range().describeFor(found));
        } catch (QuantityException wrong) {
            return explain(position, text, wrong.finding(), measure.dimension());
        }
    }

    private static Finding explain(Position position, String text, Finding finding, Dimension dimension) {
        boolean unitTwice = finding.kind() == ProblemKind.NOT_A_NUMBER && hasUnitInCell(text, dimension);
        if (unitTwice) {
            return Finding.of(
                    ProblemKind.WRONG_UNIT,
                    text,
                    "a number alone, because the header gives the unit " + position.unit());
        }
        return finding.kind() == ProblemKind.MISSING_UNIT
                ? Finding.of(finding.kind(), text, finding.allowed() + ", or the unit in the header in brackets")
                : finding;
    }

    private static boolean hasUnitInCell(String text, Dimension dimension) {
        try {
            QuantityParser.parse(text, dimension);
            return true;
        } catch (QuantityException noUnit) {
            return false;
        }
    }

    private static double measured(Position position, String text, Dimension dimension) throws QuantityException {
        return Double.isNaN(position.factor())
                ? QuantityParser.parse(text, dimension).value()
                : QuantityParser.number(text) * position.factor();
    }

    /**
     * Whether a column is in the file and its cell in this row is filled.
     *
     * @param column name of the column
     */
    public boolean has(String column) {
        @Nullable Position position = positions.get(column);
        return position != null
                && position.index() < line.size()
                && !cell(position).isEmpty();
    }

    /**
     * The text of a cell.
     *
     * @param column name of the column
     * @throws IllegalArgumentException if the cell is empty
     */
    public String text(String column) {
        return cell(filled(column));
    }

    /**
     * The text of a cell with its unit, wherever that is given.
     *
     * @param column name of the column
     * @throws IllegalArgumentException if the cell is empty
     */
    public String shown(String column) {
        return withUnit(filled(column), text(column));
    }

    private static String withUnit(Position position, String text) {
        return Double.isNaN(position.factor()) ? text : (text + " " + position.unit()).strip();
    }

    /**
     * The date of a cell.
     *
     * @param column name of a column of dates
     * @throws IllegalArgumentException if the cell is empty
     */
    public LocalDate date(String column) {
        return Objects.requireNonNull(
                ValueReader.parseDate(text(column)), "dates are checked before rows are handed on");
    }

    /**
     * The value of a cell in metres and days.
     *
     * @param column name of a column of quantities
     * @throws IllegalArgumentException if the cell is empty or the column holds something else
     */
    public double value(String column) {
        Position position = filled(column);
        if (!(position.column().content() instanceof TableColumn.Measure measure)) {
            throw new IllegalArgumentException("the column " + column + " holds no quantities");
        }
        try {
            return measured(position, cell(position), measure.dimension());
        } catch (QuantityException impossible) {
            throw new IllegalStateException("values are checked before rows are handed on", impossible);
        }
    }

    /**
     * The value of a cell in metres and days, or another value if the cell is empty.
     *
     * @param column name of a column of quantities
     * @param otherwise value of an empty cell
     */
    public double valueOr(String column, double otherwise) {
        return has(column) ? value(column) : otherwise;
    }

    /**
     * Where a cell begins; where the row begins if the file has no such column.
     *
     * @param column name of the column
     */
    public Place place(String column) {
        @Nullable Position position = positions.get(column);
        return position == null ? line.place(0) : place(position);
    }

    private Place place(Position position) {
        return line.place(position.index());
    }

    private String cell(Position position) {
        return line.values()[position.index()].strip();
    }

    private Position filled(String column) {
        @Nullable Position position = positions.get(column);
        if (position == null || cell(position).isEmpty()) {
            throw new IllegalArgumentException("the row has no value for " + column);
        }
        return position;
    }
}

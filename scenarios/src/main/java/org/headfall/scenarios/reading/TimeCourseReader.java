package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.TimeCourse;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.jspecify.annotations.Nullable;

/**
 * Reads a quantity that may change with time: {@code 25 L/s}, or {@code {file: rates.csv, column: rate}} with a table
 * of dates and values. What holds between the dates has a default for each quantity, which {@code between_dates}
 * changes.
 */
final class TimeCourseReader {
    private final Inputs inputs;

    TimeCourseReader(Inputs inputs) {
        this.inputs = inputs;
    }

    /** Words for how values between dates are meant. */
    static final Map<String, Shape> SHAPES = Map.of("hold", Shape.STEPS, "straight lines", Shape.LINES);

    /** How values between dates are meant. */
    enum Shape {
        /** Each value holds until the next date. */
        STEPS,
        /** Straight lines from value to value. */
        LINES
    }

    /** Reads a key; {@code column} names the column of the table where the document names none. */
    @Nullable
    TimeCourse required(
            Section outer, String key, Dimension dimension, AllowedRange range, Shape shape, String column) {
        @Nullable DocumentNode node = outer.node(key);
        if (!(node instanceof DocumentNode.Mapping)) {
            @Nullable Quantity quantity = node == null ? null : outer.quantity(key, dimension, range);
            return quantity == null ? null : new TimeCourse.Steady(quantity.value());
        }
        @Nullable Section section = outer.section(key);
        if (section == null) {
            return null;
        }
        Inputs.@Nullable TableFile file = inputs.table(section, "file");
        @Nullable String given = section.optionalText("column");
        @Nullable Shape between = section.optionalChoice("between_dates", SHAPES);
        section.done();
        return file == null
                ? null
                : read(file, given == null ? column : given, dimension, range, between == null ? shape : between);
    }

    /** Reads a table of dates and values, or null after problems have been reported. */
    @Nullable
    TimeCourse read(Inputs.TableFile file, String column, Dimension dimension, AllowedRange range, Shape shape) {
        TableColumn wanted = TableColumn.quantity(column, dimension, range);
        TableFormat format = TableFormat.of(TableColumn.date("date"), wanted).withOtherColumns();
        List<TimeCourse.DatedValue> values = new ArrayList<>();
        long before = inputs.problems().count();
        new TableReader(format, inputs.problems())
                .read(file.path(), file.name(), row -> add(row, wanted.name(), values));
        if (inputs.problems().count() > before) {
            return null;
        }
        return shape == Shape.STEPS ? new TimeCourse.Steps(values) : new TimeCourse.Lines(values);
    }

    private void add(TableRow row, String column, List<TimeCourse.DatedValue> values) {
        TimeCourse.DatedValue next = new TimeCourse.DatedValue(row.date("date"), row.value(column));
        if (!values.isEmpty()) {
            TimeCourse.DatedValue last = values.get(values.size() - 1);
            if (!next.date().isAfter(last.date())) {
                String found = next.date() + " after " + last.date();
                inputs.problems()
                        .add(
                                row.place("date"),
                                "date",
                                Finding.of(ProblemKind.DATE_ORDER, found, "each date later than the one before"));
                return;
            }
        }
        values.add(next);
    }
}

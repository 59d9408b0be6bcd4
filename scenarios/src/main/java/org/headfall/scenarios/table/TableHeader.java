package org.headfall.scenarios.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.Unit;
import org.jspecify.annotations.Nullable;

/** Matches the header row of a file with the columns of a format. */
final class TableHeader {
    private static final Pattern WITH_UNIT = Pattern.compile("(.*?)\\s*\\(([^()]*)\\)");
    private static final int LONGEST_NAME = 200;

    private final TableFormat format;
    private final Problems problems;
    private final Map<String, TableRow.Position> positions = new HashMap<>();
    private final List<String> unknown = new ArrayList<>();

    TableHeader(TableFormat format, Problems problems) {
        this.format = format;
        this.problems = problems;
    }

    /** Where each column stands, or null if rows cannot be read; then a problem is reported. */
    @Nullable
    Map<String, TableRow.Position> read(CsvLine line) {
        if (!isSeparatedByCommas(line)) {
            return null;
        }
        long before = problems.count();
        for (int i = 0; i < line.size(); i++) {
            readColumn(line.values()[i], i, line.place(i));
        }
        for (TableColumn column : format.columns()) {
            if (column.required() && !positions.containsKey(column.name())) {
                reportMissing(column, line);
            }
        }
        return problems.count() == before ? positions : null;
    }

    private boolean isSeparatedByCommas(CsvLine line) {
        for (char delimiter : new char[] {';', '\t', '|'}) {
            int at = line.values()[0].indexOf(delimiter);
            if (line.size() == 1 && at >= 0) {
                String name = delimiter == '\t' ? "a tab" : "the sign " + delimiter;
                Place place = new Place(line.file(), line.lines()[0], line.columns()[0] + at);
                problems.add(
                        place,
                        line.file(),
                        Finding.of(
                                ProblemKind.WRONG_DELIMITER,
                                name + " between the column names",
                                "commas between values and points before decimals"));
                return false;
            }
        }
        return true;
    }

    private void readColumn(String title, int index, Place place) {
        Matcher withUnit = WITH_UNIT.matcher(title.length() > LONGEST_NAME ? "" : title.strip());
        boolean hasUnit = withUnit.matches();
        String name = TableColumn.plain(hasUnit ? withUnit.group(1) : title);
        @Nullable TableColumn column = find(name);
        if (column == null) {
            reportUnknown(title, name, place);
        } else if (positions.containsKey(name)) {
            problems.add(place, name, Finding.of(ProblemKind.DUPLICATE_COLUMN, title, "each column once"));
        } else {
            double factor = hasUnit ? factor(column, withUnit.group(2), place) : Double.NaN;
            positions.put(name, new TableRow.Position(column, index, factor, hasUnit ? withUnit.group(2) : ""));
        }
    }

    private double factor(TableColumn column, String unit, Place place) {
        if (!(column.content() instanceof TableColumn.Measure measure)) {
            problems.add(place, column.name(), Finding.of(ProblemKind.WRONG_UNIT, unit, "no unit for this column"));
            return Double.NaN;
        }
        try {
            return Unit.parse(unit, measure.dimension()).toMetresAndDays();
        } catch (QuantityException wrong) {
            problems.add(place, column.name(), wrong.finding());
            return Double.NaN;
        }
    }

    private @Nullable TableColumn find(String name) {
        for (TableColumn column : format.columns()) {
            if (column.name().equals(name)) {
                return column;
            }
        }
        return null;
    }

    private void reportUnknown(String title, String name, Place place) {
        unknown.add(name);
        if (!format.otherColumns()) {
            Finding finding = title.isBlank()
                    ? Finding.of(ProblemKind.EMPTY_VALUE, "a column without a name", String.join(", ", format.names()))
                    : new Finding(
                            ProblemKind.UNKNOWN_COLUMN,
                            title,
                            String.join(", ", format.names()),
                            NearestSpelling.of(name, format.names()));
            problems.add(place, title.isBlank() ? "header" : title, finding);
        }
    }

    private void reportMissing(TableColumn column, CsvLine line) {
        @Nullable String near = NearestSpelling.of(column.name(), unknown);
        String found = near == null ? "no column " + column.name() : "no column " + column.name() + ", but " + near;
        Finding finding =
                Finding.of(ProblemKind.MISSING_COLUMN, found, "the columns " + String.join(", ", format.names()));
        problems.add(line.place(0), line.file(), finding);
    }
}

package org.headfall.scenarios.table;

import java.util.HashMap;
import java.util.LinkedHashMap;
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
    private final Map<String, String> unknown = new LinkedHashMap<>();

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
        @Nullable TableColumn column = find(name, TableColumn.plain(title));
        if (column == null) {
            reportUnknown(title, name, place);
        } else if (positions.containsKey(column.name())) {
            problems.add(place, column.title(), Finding.of(ProblemKind.DUPLICATE_COLUMN, title, "each column once"));
        } else {
            double factor = hasUnit ? factor(column, withUnit.group(2), place) : Double.NaN;
            positions.put(
                    column.name(), new TableRow.Position(column, index, factor, hasUnit ? withUnit.group(2) : ""));
        }
    }

    private double factor(TableColumn column, String unit, Place place) {
        if (!(column.content() instanceof TableColumn.Measure measure)) {
            problems.add(place, column.title(), Finding.of(ProblemKind.WRONG_UNIT, unit, "no unit for this column"));
            return Double.NaN;
        }
        try {
            return Unit.parse(unit, measure.dimension()).toMetresAndDays();
        } catch (QuantityException wrong) {
            problems.add(place, column.title(), wrong.finding());
            return Double.NaN;
        }
    }

    /** A user may name a column with the unit behind it, as it stands in the file. */
    private @Nullable TableColumn find(String name, String withUnit) {
        for (TableColumn column : format.columns()) {
            if (column.name().equals(name) || column.name().equals(withUnit)) {
                return column;
            }
        }
        return null;
    }

    private void reportUnknown(String title, String name, Place place) {
        unknown.put(name, title.strip());
        if (!format.otherColumns()) {
            String allowed = String.join(", ", format.titles());
            Finding finding = title.isBlank()
                    ? Finding.of(ProblemKind.EMPTY_VALUE, "a column without a name", allowed)
                    : new Finding(
                            ProblemKind.UNKNOWN_COLUMN, title, allowed, NearestSpelling.of(name, format.titles()));
            problems.add(place, title.isBlank() ? "header" : title, finding);
        }
    }

    private void reportMissing(TableColumn column, CsvLine line) {
        @Nullable String near = NearestSpelling.of(column.name(), unknown.keySet());
        String found = "no column " + column.title() + (near == null ? "" : ", but " + unknown.get(near));
        Finding finding =
                Finding.of(ProblemKind.MISSING_COLUMN, found, "the columns " + String.join(", ", format.titles()));
        problems.add(line.place(0), line.file(), finding);
    }
}

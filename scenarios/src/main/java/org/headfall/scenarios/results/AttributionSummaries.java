package org.headfall.scenarios.results;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributedChange.Cause;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.quantity.DischargeUnit;

/** Reads {@code attribution.csv} back. */
public final class AttributionSummaries {

    /** Length of a day as ISO text; the time may follow. */
    private static final int DAY_LENGTH = "2026-07-01".length();

    private AttributionSummaries() {}

    /**
     * Reads.
     *
     * @param folder folder of results
     * @return who did what until each report date, in order of time; empty if there is no file, or the run had nothing to split
     * @throws IOException if the file cannot be read
     */
    public static List<AttributionSummary> read(Path folder) throws IOException {
        Path file = folder.resolve(AttributionCsv.NAME);
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        Map<String, Map<String, List<Line>>> dates = new LinkedHashMap<>();
        try (CsvReader<NamedCsvRecord> lines = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord line : lines) {
                dates.computeIfAbsent(line.getField(AttributionCsv.DATE), date -> new LinkedHashMap<>())
                        .computeIfAbsent(
                                CsvLineCells.original(line.getField(AttributionCsv.AT)), place -> new ArrayList<>())
                        .add(Line.of(line));
            }
            return dates.entrySet().stream()
                    .map(date -> summary(date.getKey(), date.getValue()))
                    .toList();
        } catch (IllegalArgumentException
                | NoSuchElementException
                | DateTimeParseException
                | IndexOutOfBoundsException damaged) {
            throw new IOException(AttributionCsv.NAME + " is damaged: " + damaged.getMessage(), damaged);
        }
    }

    private static AttributionSummary summary(String date, Map<String, List<Line>> places) {
        List<AttributedChange> drawdown = new ArrayList<>();
        List<AttributedChange> loss = new ArrayList<>();
        places.forEach((place, lines) -> {
            drawdown.add(change(place, lines.stream().map(Line::ofDrawdown).toList()));
            if (lines.stream().noneMatch(line -> Double.isNaN(line.loss()))) {
                loss.add(change(place, lines.stream().map(Line::ofLoss).toList()));
            }
        });
        return new AttributionSummary(
                LocalDate.parse(date.substring(0, DAY_LENGTH)), largestFirst(drawdown), largestFirst(loss));
    }

    private static List<AttributedChange> largestFirst(List<AttributedChange> changes) {
        return changes.stream()
                .sorted(Comparator.comparingDouble(AttributedChange::whole).reversed())
                .toList();
    }

    private static AttributedChange change(String place, List<Part> parts) {
        Part whole = only(parts, AttributionCsv.EVERYTHING);
        return new AttributedChange(
                place,
                whole.amount(),
                whole.seasonal(),
                causes(parts, AttributionCsv.BY_BORE),
                causes(parts, AttributionCsv.BY_HOLDER),
                causes(parts, AttributionCsv.BY_GROUP),
                only(parts, AttributionCsv.NO_BORE).amount(),
                only(parts, AttributionCsv.NO_CAUSE).amount());
    }

    private static Part only(List<Part> parts, String by) {
        return parts.stream().filter(part -> part.by().equals(by)).findFirst().orElseThrow();
    }

    private static List<Cause> causes(List<Part> parts, String by) {
        return parts.stream()
                .filter(part -> part.by().equals(by))
                .map(part -> new Cause(part.cause(), part.amount()))
                .toList();
    }

    /** A part of drawdown (m) or of the loss of discharge (m³/d) at a place. */
    private record Part(String by, String cause, double amount, double seasonal) {}

    /** A line of the file in metres and m³/d; NaN for a loss where nothing flows. */
    private record Line(String by, String cause, double drawdown, double seasonal, double loss, double seasonalLoss) {

        static Line of(NamedCsvRecord line) {
            return new Line(
                    line.getField(AttributionCsv.SPLIT_BY),
                    CsvLineCells.original(line.getField(AttributionCsv.CAUSE)),
                    number(line.getField(AttributionCsv.DRAWDOWN)),
                    number(line.getField(AttributionCsv.SEASONAL_DRAWDOWN)),
                    DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(number(line.getField(AttributionCsv.LOSS))),
                    DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(
                            number(line.getField(AttributionCsv.SEASONAL_LOSS))));
        }

        private static double number(String cell) {
            return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
        }

        Part ofDrawdown() {
            return new Part(by, cause, drawdown, seasonal);
        }

        Part ofLoss() {
            return new Part(by, cause, loss, seasonalLoss);
        }
    }
}

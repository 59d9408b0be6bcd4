package org.headfall.scenarios.monitoring;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.UncountedCsv;
import org.headfall.scenarios.results.WrittenFiles;

/** Writes the folder of a study of warning levels. */
public final class WarningOutputs {

    /** Names of the files. */
    public static final WrittenFiles FILES =
            WrittenFiles.named("(warnings|warning-levels|expected-bands|limits-not-counted)\\.csv");

    private final List<Warning> warnings;
    private final List<UncountedLimit> leftOut;
    private final ExpectedBands bands;
    private final RunCalendar calendar;

    /**
     * Outputs of a study.
     *
     * @param warnings the warnings
     * @param leftOut limits without a warning
     * @param bands what readings are expected
     * @param calendar calendar of the run
     */
    public WarningOutputs(
            List<Warning> warnings, List<UncountedLimit> leftOut, ExpectedBands bands, RunCalendar calendar) {
        this.leftOut = List.copyOf(leftOut);
        this.warnings = List.copyOf(warnings);
        this.bands = bands;
        this.calendar = calendar;
    }

    /**
     * Writes {@code warnings.csv}, one line a limit and place, {@code warning-levels.csv}, one line for each place that can be
     * watched, {@code expected-bands.csv}, one line a place and year, and, where limits are left out, {@code
     * limits-not-counted.csv}.
     *
     * @param target the folder
     * @param overwrite whether an older study there may be replaced
     * @throws ResultsException if it may not, or a file cannot be written
     */
    public void into(Path target, boolean overwrite) throws ResultsException {
        try (ResultsFolder folder = ResultsFolder.open(target, overwrite, FILES)) {
            writeWarnings(folder.file("warnings.csv"));
            writeLevels(folder.file("warning-levels.csv"));
            writeBands(folder.file("expected-bands.csv"));
            if (!leftOut.isEmpty()) {
                UncountedCsv.write(folder.file(UncountedCsv.NAME), leftOut);
            }
            folder.complete();
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        }
    }

    private void writeWarnings(Path target) throws IOException {
        CsvFile.write(
                target,
                List.of(
                        "limit",
                        "at",
                        "crossed on if nobody acts",
                        "at the earliest, by its error",
                        "at the latest, by its error",
                        "bores to stop",
                        "last day for stopping them",
                        "lead time (yr)",
                        "result"),
                warnings,
                warning -> {
                    CsvLineCells cells =
                            new CsvLineCells().text(warning.limit()).text(warning.station());
                    date(cells, warning.crossing().computed());
                    date(cells, warning.crossing().earliest());
                    date(cells, warning.crossing().latest());
                    cells.text(warning.stopped());
                    if (warning.lastChance().isPresent()) {
                        date(cells, warning.lastChance().get().day());
                        cells.number(warning.lastChance().get().leadTime() / RunCalendar.DAYS_PER_YEAR, 2);
                    } else {
                        cells.empty().empty();
                    }
                    return cells.text(warning.says());
                });
    }

    private void writeLevels(Path target) throws IOException {
        try (CsvFile file = new CsvFile(
                target,
                List.of(
                        "limit",
                        "limit at",
                        "last day for acting",
                        "watch at",
                        "warning level: head then (m above datum)",
                        "lowest head in the year before (m above datum)",
                        "highest head in the year before (m above datum)",
                        "lowest expected reading then (m above datum)",
                        "highest expected reading then (m above datum)"))) {
            for (Warning warning : warnings) {
                if (warning.lastChance().isPresent()) {
                    writeLevels(file, warning, warning.lastChance().get());
                }
            }
            file.complete();
        }
    }

    private void writeLevels(CsvFile file, Warning warning, Warning.LastChance chance) throws IOException {
        for (Warning.WarningLevel level : chance.levels()) {
            CsvLineCells cells = new CsvLineCells().text(warning.limit()).text(warning.station());
            date(cells, chance.day());
            ExpectedBand band = bands.on(level.station(), chance.day());
            file.line(cells.text(level.station())
                    .number(level.head(), 2)
                    .number(level.lowest(), 2)
                    .number(level.highest(), 2)
                    .number(band.lowest(), 2)
                    .number(band.highest(), 2));
        }
    }

    private void writeBands(Path target) throws IOException {
        CsvFile.write(
                target,
                List.of(
                        "at",
                        "date",
                        "computed head (m above datum)",
                        "expected head (m above datum)",
                        "lowest expected reading (m above datum)",
                        "highest expected reading (m above datum)",
                        "numerical error (m)",
                        "two standard deviations of readings (m)",
                        "the band rests on"),
                bands.yearly(),
                band -> {
                    CsvLineCells cells = new CsvLineCells().text(band.station());
                    date(cells, band.day());
                    return cells.number(band.computed(), 2)
                            .number(band.expected(), 2)
                            .number(band.lowest(), 2)
                            .number(band.highest(), 2)
                            .number(band.numericalError(), 3)
                            .number(band.spread(), 3)
                            .text(band.basis());
                });
    }

    private void date(CsvLineCells cells, OptionalDouble day) {
        if (day.isPresent()) {
            date(cells, day.getAsDouble());
        } else {
            cells.empty();
        }
    }

    private void date(CsvLineCells cells, double day) {
        cells.date(calendar.at(day).toLocalDate().atStartOfDay());
    }
}

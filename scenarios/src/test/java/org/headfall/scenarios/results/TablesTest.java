package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesTest {

    private final Locale locale = Locale.getDefault();

    @TempDir
    Path folder;

    @BeforeEach
    void writeUnderALocaleWithDecimalComma() throws IOException {
        Locale.setDefault(Locale.GERMANY);
        Tables.write(folder, FinishedField.run(SmallField.description()));
    }

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(locale);
    }

    private List<NamedCsvRecord> read(String name) throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(folder.resolve(name))) {
            return reader.stream().toList();
        }
    }

    @Test
    void artesianHeadHasALinePerStationAndReportDateWithUnitsInTheHeader() throws IOException {
        List<NamedCsvRecord> lines = read("artesian-head.csv");
        assertEquals(4 * 2, lines.size());
        NamedCsvRecord last = lines.get(1);
        assertEquals("Bore, \"north\"", last.getField("name"));
        assertEquals("after 10 years", last.getField("when"));
        assertEquals("2037-07-01", last.getField("date"));
        assertEquals("19.00", last.getField("head above ground at start (m)"));
        assertEquals("186.0", last.getField("pressure at ground at start (kPa at 9.79 kPa/m)"));
        assertEquals("16.00", last.getField("head above ground (m)"));
        // By hand, with Kell's densities at 20 and 60 degC over a screen at -100 m, ground at 100 m.
        double hot = (998.204 * (100 + 16 + 100) - 983.199 * (100 + 100)) * 9.80665 / 1000;
        assertEquals(hot, Double.parseDouble(last.getField("pressure at ground with this water (kPa)")), 0.06);
        assertEquals("60.0", last.getField("mean temperature of water in bore (degC)"));
        assertEquals("3.000", last.getField("loss of head since start (m)"));
        assertEquals("75.00", last.getField("water above pump intake (m)"));
        assertEquals("10.000", last.getField("discharge (L/s)"));
        String flows = last.getField("flows by itself");
        assertTrue(flows.startsWith("with breaks: stops first on 2027-"), flows);
        assertTrue(flows.endsWith(", flows at the end"), flows);
    }

    @Test
    void declineOverFiveYearsIsBlankBeforeFiveYearsHavePassed() throws IOException {
        List<NamedCsvRecord> lines = read("artesian-head.csv");
        assertEquals("after 1 year", lines.get(0).getField("when"));
        assertEquals("", lines.get(0).getField("decline over last five years (m/yr)"));
        // Five of the ten years between the records of 1 and 10 years, in which head rises by 197 m along a line.
        double rise = (200 - 3) / (9 * 365.25) * 365.25;
        assertEquals(-rise, Double.parseDouble(lines.get(1).getField("decline over last five years (m/yr)")), 0.02);
    }

    @Test
    void declineSaysWhyNoYearsAreGiven() throws IOException {
        List<NamedCsvRecord> lines = read("decline.csv");
        assertEquals(
                "The run has not yet lasted five years. Not above any more: aquifer top, outlet, pump intake.",
                lines.get(0).getField("remark"));
        assertEquals(
                "No fall towards: aquifer top, outlet, pump intake.",
                lines.get(1).getField("remark"));
    }

    @Test
    void recoveryIsCountedFromTheDayOnWhichTakingStops() throws IOException {
        assertTrue(read("recovery.csv").get(1).getField("remark").startsWith("How places recover when"));
        NamedCsvRecord line = read("recovery.csv").get(0);
        assertEquals("Br\u00fccke", line.getField("station"));
        assertEquals("2.250", line.getField("largest drawdown from then on (m)"));
        assertEquals("1.00", line.getField("years after the stop"));
        assertEquals("yes", line.getField("has it passed"));
        assertEquals("2.000", line.getField("years from the stop until nine tenths are recovered"));
    }

    @Test
    void attributionAddsUpByBoreHolderAndGroup() throws IOException {
        List<NamedCsvRecord> lines = read("attribution.csv").stream()
                .filter(line -> line.getField("at").equals("Lignum Spring"))
                .toList();
        assertEquals("0.850000", lines.get(0).getField("drawdown (m)"));
        assertEquals("1.000000", lines.get(0).getField("loss of discharge (L/s)"));
        double rest = sum(lines, "no bore", "loss of discharge (L/s)");
        assertEquals(0.2, rest, 1e-9);
        double notLinear = sum(lines, "no cause", "loss of discharge (L/s)");
        assertEquals(0.05, notLinear, 1e-9);
        assertEquals(0.07, sum(lines, "no bore", "drawdown (m)"), 1e-9);
        assertEquals(0.03, sum(lines, "no cause", "drawdown (m)"), 1e-9);
        for (String by : List.of("bore", "holder", "group")) {
            assertEquals(0.75, sum(lines, by, "drawdown (m)"), 1e-9, by);
            assertEquals(0.1, sum(lines, by, "of it by the season (m)"), 1e-9, by);
            assertEquals(100, sum(lines, by, "share of loss (%)") + 100 * (rest + notLinear), 1e-9, by);
            assertEquals(0.05, sum(lines, by, "of it by the season (L/s)"), 1e-9, by);
        }
        assertEquals("", read("attribution.csv").get(0).getField("loss of discharge (L/s)"));
    }

    /** Rows: parts of 0.38 m that mostly cancel, one of 4 mm, and at the spring a sound drawdown of which the loss is nothing. */
    @Test
    void attributionTellsSharesOnlyOfWhatTheySaySomethingAbout() throws IOException {
        FinishedRun run = FinishedField.run(SmallField.description());
        AttributionTable like = run.findings().attribution().get(0);
        AttributionTable table = new AttributionTable(
                like.label(),
                like.day(),
                like.stations(),
                new double[][] {{-2.64, 3.02}, {0.004, 0}, {1, 3}, {1, 3}},
                new double[4][2],
                new double[4],
                new double[] {0.38, 0.004, 4, 4},
                new double[][] {{}, {}, {0.1, 0.2}, {}},
                new double[][] {{}, {}, {0, 0}, {}},
                new double[] {Double.NaN, Double.NaN, 0, Double.NaN},
                new double[] {Double.NaN, Double.NaN, 0.3, Double.NaN});
        Tables.write(folder, run.withFindings(run.findings().withAttribution(List.of(table))));
        assertEquals(
                List.of(
                        " / no shares of drawdown: parts for and against mostly cancel",
                        " / no shares of drawdown: next to nothing in all",
                        "25.0 / no shares of loss: next to nothing in all",
                        "25.0 / "),
                read("attribution.csv").stream()
                        .filter(line -> line.getField("cause")
                                .equals(run.description().bores().get(0).name()))
                        .map(line -> line.getField("share of drawdown (%)") + " / " + line.getField("remark"))
                        .toList());
        assertTrue(read("attribution.csv").stream()
                .allMatch(line -> line.getField("share of loss (%)").isEmpty()));
    }

    /** What the invented table says, in metres and m³/d: written in L/s, read back. */
    @Test
    void attributionIsReadBackTheMostAffectedFirst() throws IOException {
        AttributionSummary read = AttributionSummaries.read(folder).get(0);
        assertEquals(LocalDate.of(2028, 7, 1), read.date());
        assertEquals(
                List.of(4.1, 3.1, 0.85, 0.4),
                read.drawdown().stream().map(AttributedChange::whole).toList());
        AttributedChange drawdown = read.drawdown().get(2);
        assertEquals("Lignum Spring", drawdown.place());
        assertEquals(
                List.of(0.5, 0.25),
                drawdown.bores().stream().map(AttributedChange.Cause::amount).toList());
        assertEquals(0.1, drawdown.seasonal(), 1e-9);
        assertEquals(0.07, drawdown.drift(), 1e-9);
        assertEquals(0.03, drawdown.notLinear(), 1e-9);
        assertEquals(1, read.loss().size());
        AttributedChange loss = read.loss().get(0);
        assertEquals("Lignum Spring", loss.place());
        assertEquals(86.4, loss.whole(), 1e-9);
        assertEquals(43.2, loss.bores().get(0).amount(), 1e-9);
        assertEquals(4.32, loss.seasonal(), 1e-9);
        assertEquals(17.28, loss.drift(), 1e-9);
        assertEquals(4.32, loss.notLinear(), 1e-9);
    }

    /** Parts that three decimals would make 0.006 and 0.005 of 0.010 L/s: 60 and 50 %. */
    @Test
    void sharesInTheFileAreThoseOfItsFigures() throws IOException {
        FinishedRun run = FinishedField.run(SmallField.description());
        AttributionTable like = run.findings().attribution().get(0);
        double[] lost = {0.0057, 0.0048};
        double loss = 0.0105;
        AttributionTable table = new AttributionTable(
                like.label(),
                like.day(),
                like.stations(),
                new double[][] {{1, 2}, {0.00606, 0.00505}, {1, 3}, {1, 3}},
                new double[4][2],
                new double[4],
                new double[] {3, 0.01111, 4, 4},
                new double[][] {{}, {}, {86.4 * lost[0], 86.4 * lost[1]}, {}},
                new double[][] {{}, {}, {0, 0}, {}},
                new double[] {Double.NaN, Double.NaN, 0, Double.NaN},
                new double[] {Double.NaN, Double.NaN, 86.4 * loss, Double.NaN});
        Tables.write(folder, run.withFindings(run.findings().withAttribution(List.of(table))));
        assertEquals(
                List.of("54.3", "45.7"),
                read("attribution.csv").stream()
                        .filter(line -> line.getField("at").equals("Lignum Spring")
                                && line.getField("split by").equals("bore"))
                        .map(line -> line.getField("share of loss (%)"))
                        .toList());
        AttributionSummary summary = AttributionSummaries.read(folder).get(0);
        AttributedChange read = summary.loss().get(0);
        for (int bore = 0; bore < lost.length; bore++) {
            double share = read.shares(ShareBase.LEAST_LOSS)
                    .percent(read.bores().get(bore).amount())
                    .orElseThrow();
            assertEquals(100 * lost[bore] / loss, share, 0.01);
        }
        AttributedChange drawdown = summary.drawdown().get(3);
        assertEquals(0.00606, drawdown.bores().get(0).amount(), 1e-12);
    }

    @Test
    void allDatesOfAttributionAreReadInOrderOfTime() throws IOException {
        Path file = folder.resolve("attribution.csv");
        List<String> lines = Files.readAllLines(file);
        List<String> both = new ArrayList<>(lines);
        lines.stream()
                .skip(1)
                .map(line -> line.replace(",2028-", ",2031-").replace("4.100000", "5.500000"))
                .forEach(both::add);
        Files.write(file, both);
        List<AttributionSummary> read = AttributionSummaries.read(folder);
        assertEquals(
                List.of(2028, 2031),
                read.stream().map(summary -> summary.date().getYear()).toList());
        for (AttributionSummary summary : read) {
            assertEquals(4, summary.drawdown().size());
        }
        assertEquals(4.1, read.get(0).drawdown().get(0).whole());
        assertEquals(5.5, read.get(1).drawdown().get(0).whole());
    }

    @Test
    void aFolderWithoutAttributionHasNoneAndADamagedOneSaysSo() throws IOException {
        Path file = folder.resolve("attribution.csv");
        Files.writeString(file, Files.readString(file).replace("0.8500", "much"));
        IOException damaged = assertThrows(IOException.class, () -> AttributionSummaries.read(folder));
        assertTrue(damaged.getMessage().startsWith("attribution.csv is damaged"), damaged.getMessage());
        Files.delete(file);
        assertEquals(List.of(), AttributionSummaries.read(folder));
    }

    private static double sum(List<NamedCsvRecord> lines, String by, String column) {
        return lines.stream()
                .filter(line -> line.getField("split by").equals(by))
                .mapToDouble(line -> Double.parseDouble(line.getField(column)))
                .sum();
    }

    @Test
    void interferenceHasAColumnPerCauseAndTheShares() throws IOException {
        List<NamedCsvRecord> lines = read("interference.csv");
        assertEquals(3, lines.size());
        assertEquals("60.0000", lines.get(0).getField("due to Brücke (m)"));
        assertEquals("179.0000", lines.get(0).getField("sum of these causes (m)"));
        assertEquals("200.0000", lines.get(0).getField("drawdown in the full run (m)"));
        assertEquals("-21.0000", lines.get(0).getField("sum less full run (m)"));
        assertEquals("68.00", lines.get(1).getField("yield lost to neighbours (m3/d)"));
        assertEquals("", lines.get(2).getField("own share (m)"));
    }

    @Test
    void seriesAreInLongForm() throws IOException {
        List<NamedCsvRecord> lines = read("bores.csv");
        assertEquals(4 * 4, lines.size());
        assertEquals("117.750", lines.get(1).getField("head (m above datum)"));
        assertEquals("2027-07-31", lines.get(1).getField("date"));
        assertEquals("", lines.get(12).getField("discharge (m3/d)"));
    }

    @Test
    void waterBalanceClosesEachPeriodWithATotal() throws IOException {
        List<NamedCsvRecord> lines = read("water-balance.csv");
        assertEquals(2 * 5, lines.size());
        assertEquals("total", lines.get(4).getField("term"));
        assertEquals("2028-07-01", lines.get(4).getField("to"));
    }

    @Test
    void limitsSayHoldsOrCrossedAndNeverApproved() throws IOException {
        List<NamedCsvRecord> lines = read("limits.csv");
        assertEquals("crossed", lines.get(0).getField("outcome"));
        assertEquals("-199.800", lines.get(0).getField("margin (negative: beyond the limit)"));
        assertEquals("holds", lines.get(1).getField("outcome"));
        assertEquals("not evaluated", lines.get(2).getField("outcome"));
        assertTrue(lines.get(0).getField("remark").contains("grid and far boundaries were not tested"));
        assertFalse(lines.get(2).getField("remark").contains("not tested"), "there is no value that could err");
        assertFalse(Files.readString(folder.resolve("limits.csv")).contains("approved"));
    }

    @Test
    void aNameThatLooksLikeAFormulaIsDefused() throws IOException {
        assertEquals("'=spring keeps water", read("limits.csv").get(0).getField("limit"));
    }
}

package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.run.ScenarioRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables of an allocation beside each other and beside a run of the document that reads the rates from {@code rates.csv}. */
class RatesFedBackTest {

    private static final LocalDate START = LocalDate.of(2026, 7, 1);
    private static final LocalDate END = LocalDate.of(2030, 7, 1);
    private static final double MEGALITRES_PER_YEAR = 31.5576;

    private static final String DOCUMENT = """
            title: A field
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            boundaries:
              - {name: east, side: east, fixed_head: 100 m}
            springs:
              - {name: soak, at: [2.25 km, 5.25 km], outlet: 97 m, conductance: 100 m2/d}
            protected:
              - {name: fence, at: [6.25 km, 2.25 km]}
            bores:
              - {name: "one, near", at: [4.75 km, 5.25 km], holder: Elder, group: proposed, screen_radius: 100 mm, rate: ONE}
              - {name: two, at: [7.75 km, 5.25 km], holder: Younger, group: proposed, screen_radius: 100 mm, rate: TWO}
            accounts: {water_year: 1 July}
            limits:
              - {name: keeps head, quantity: drawdown, at: soak, cause: proposed bores, compared_with: without them, when: within 2 yr, at_most: 0.8 m}
              - {name: floor, quantity: floor level, at: fence, when: ever, at_least: 93 m}
              - {name: year, quantity: volume, at: proposed bores, when: ever, at_most: 500 ML}
              - {name: own, quantity: volume, at: two, when: after 1 yr, at_most: 300 ML}
            start: {steady: without bores}
            output: {grids: yearly, bores: monthly, report_after: [1 yr], head_tolerance: 0.5 mm}
            allocation:
              goal: largest yield
              seasons: [{from: 1 October, to: 31 March}, {from: 1 April, to: 31 August}]
              rates_change_after: 2 yr
              MINIMUM
              largest_rate: 30 L/s
              efficiency: 60 %
            """;

    @TempDir
    private Path folder;

    private AllocationResult allocate(String minimum) throws Exception {
        AllocationResult result = document("1 L/s", "1 L/s", minimum).allocate();
        AllocationFiles.write(folder, result);
        return result;
    }

    private AllocationDocument document(String one, String two, String minimum) throws IOException {
        return AllocationDocument.of(
                folder, DOCUMENT.replace("ONE", one).replace("TWO", two).replace("MINIMUM", minimum));
    }

    /** What the run of the rates as they are read from the table says of the limits. */
    private List<LimitResult> fedBack() throws Exception {
        AllocationDocument document =
                document("{file: rates.csv, column: \"one, near\"}", "{file: rates.csv, column: two}", "");
        return new ScenarioRun(document.plan(), List.of(), (stage, fraction) -> {})
                .into(folder.resolve("results"), false)
                .limits();
    }

    private List<NamedCsvRecord> csv(String file) throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(folder.resolve(file))) {
            return reader.stream().toList();
        }
    }

    private static double number(NamedCsvRecord line, String column) {
        return Double.parseDouble(line.getField(column));
    }

    private NamedCsvRecord line(String file, String column, String name) throws IOException {
        return csv(file).stream()
                .filter(one -> one.getField(column).equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Mean of the rates of a bore (L/s), each from its date until the next. */
    private double integrated(String bore) throws IOException {
        List<NamedCsvRecord> rates = csv("rates.csv");
        List<LocalDate> dates = new ArrayList<>();
        rates.forEach(line -> dates.add(LocalDate.parse(line.getField("date"))));
        dates.add(END);
        assertEquals(START, dates.get(0));
        double sum = 0;
        for (int i = 0; i < rates.size(); i++) {
            sum += number(rates.get(i), bore + " (L/s)") * ChronoUnit.DAYS.between(dates.get(i), dates.get(i + 1));
        }
        return sum / ChronoUnit.DAYS.between(START, END);
    }

    @Test
    void yieldsAreTheIntegralsOfTheRates() throws Exception {
        AllocationResult result = allocate("");
        double all = 0;
        for (String bore : List.of("one, near", "two")) {
            double mean = integrated(bore);
            assertTrue(mean > 1, bore + " takes " + mean);
            NamedCsvRecord line = line("yields.csv", "bore", bore);
            assertEquals(mean, number(line, "mean (L/s)"), 6e-4, bore);
            assertEquals(mean * MEGALITRES_PER_YEAR, number(line, "mean (ML/yr)"), 6e-3, bore);
            all += mean;
        }
        assertEquals(all * 86.4, result.yield(), 1e-3);
        assertEquals(0, number(line("rates.csv", "date", "2027-09-01"), "two (L/s)"), "September is in no season");
    }

    /** What the table says that the simulator leaves is what a run of the written rates leaves: to 1 mm, and volumes to their digits. */
    @Test
    void everyLimitIsKeptAsTheTableSays() throws Exception {
        AllocationResult result = allocate("");
        assertEquals(List.of(), result.relaxed());
        assertEquals(List.of(), result.uncounted());
        List<LimitResult> limits = fedBack();
        assertEquals(4, limits.size());
        for (LimitResult one : limits) {
            assertEquals(Outcome.Kind.HOLDS, one.outcome().kind(), one.toString());
            Outcome.Worst worst = one.outcome().worstIfAny().orElseThrow();
            boolean volume = one.limit().quantity().unit().equals("ML");
            assertTrue(worst.margin() >= (volume ? -1e-6 : -1e-3), one.toString());
            NamedCsvRecord line = line("prices.csv", "limit", one.limit().nameAndPlace());
            assertEquals(one.limit().quantity().unit(), line.getField("unit"));
            assertEquals("ML/yr per " + (volume ? "ML" : "m"), line.getField("unit of the price"));
            assertEquals(worst.margin(), number(line, "left by the simulator"), volume ? 6e-5 : 1.1e-3, one.toString());
        }
        double largest = csv("prices.csv").stream()
                .mapToDouble(one -> number(one, "price"))
                .max()
                .orElseThrow();
        assertTrue(largest > 0, "something binds");
    }

    /** No more than a tenth of a price is gained by 0.1 of the unit, and no column is another. */
    @Test
    void pricesStandBesideTheirGains() throws Exception {
        AllocationResult result = allocate("");
        for (AllocationResult.Kept one : result.requirements()) {
            NamedCsvRecord line = line("prices.csv", "limit", one.name());
            assertEquals(one.price(), number(line, "price"), 6e-5, one.toString());
            assertEquals(one.gain(), number(line, "gain by 0.1 of the unit (ML/yr)"), 6e-5, one.toString());
            assertTrue(one.gain() <= 0.1 * one.price() * (1 + 1e-6) + 1e-9, one.toString());
            assertEquals(
                    START.plusDays(Math.round(Math.floor(one.day()))).toString(),
                    line.getField("tightest on").substring(0, 10));
        }
    }

    /** What is passed, and what is kept free of errors besides, is what has to give way: to 1 mm. */
    @Test
    void whatGivesWayIsPassedByAsMuchAsTheTableSays() throws Exception {
        AllocationResult result = allocate("minimums: [{holder: Younger, at_least: 16 L/s}]");
        assertTrue(!result.relaxed().isEmpty(), "nothing gives way");
        List<NamedCsvRecord> conflicts = csv("conflicts.csv");
        for (LimitResult one : fedBack()) {
            Outcome.Worst worst = one.outcome().worstIfAny().orElseThrow();
            NamedCsvRecord gaveWay = conflicts.stream()
                    .filter(line -> line.getField("limit").equals(one.limit().nameAndPlace()))
                    .findFirst()
                    .orElse(null);
            if (gaveWay == null) {
                assertEquals(Outcome.Kind.HOLDS, one.outcome().kind(), one.toString());
                continue;
            }
            assertEquals(Outcome.Kind.CROSSED, one.outcome().kind(), one.toString());
            assertEquals(one.limit().quantity().allowed(), number(gaveWay, "allowed"), 6e-5);
            double kept = number(
                    line("prices.csv", "limit", one.limit().nameAndPlace()), "kept free for the numerical error");
            double amount = number(gaveWay, "gives way by");
            assertEquals(kept - worst.margin(), amount, 1.1e-3, one.toString());
            boolean fromBelow = one.limit().quantity().limitsFromBelow();
            assertEquals(
                    number(gaveWay, "allowed") + (fromBelow ? -amount : amount),
                    number(gaveWay, "would have to be"),
                    1.1e-4);
            assertEquals(one.limit().quantity().unit(), gaveWay.getField("unit"));
        }
        assertEquals(conflicts.size(), result.relaxed().size());
    }
}

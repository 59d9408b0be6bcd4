package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.UncountedCsv;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;

/** The tables of an allocation, each with the cells that both its file and the page hold. */
final class AllocationTables {

    /** A microlitre a second is 0.00003 ML in a year, which no limit on a volume is written to. */
    private static final int DIGITS_OF_RATES = 6;

    /** Name of the table of trades. */
    static final String TRADING = "trading";

    private final AllocationResult result;

    private AllocationTables(AllocationResult result) {
        this.result = result;
    }

    /** All tables that there is something in, or that always are. */
    static List<PlanningTable> of(AllocationResult result) {
        AllocationTables tables = new AllocationTables(result);
        List<PlanningTable> all = new ArrayList<>();
        if (!result.relaxed().isEmpty()) {
            all.add(tables.conflicts());
        }
        all.add(tables.prices());
        all.add(tables.yields());
        all.add(tables.trading());
        if (!result.uncounted().isEmpty()) {
            all.add(tables.uncounted());
        }
        all.add(tables.rates());
        return all;
    }

    private PlanningTable rates() {
        List<String> header = new ArrayList<>(List.of("date"));
        result.bores().forEach(bore -> header.add(bore.name() + " (L/s)"));
        RateSchedule schedule = new RateSchedule(result);
        List<List<String>> rows = Arrays.stream(schedule.days())
                .mapToObj(day -> {
                    CsvLineCells cells =
                            new CsvLineCells().date(result.run().calendar().at(day));
                    result.bores()
                            .forEach(bore -> cells.number(
                                    DischargeUnit.LITRES_PER_SECOND.of(schedule.rate(bore, day)), DIGITS_OF_RATES));
                    return cells.shown();
                })
                .toList();
        return new PlanningTable(
                "rates",
                "Rates by date, each from its date on",
                "rates.csv",
                header,
                rows,
                List.of("A document reads the rates of a bore as rate: {file: rates.csv, column: NAME}."));
    }

    private PlanningTable yields() {
        return new PlanningTable(
                "yields",
                "Mean taking of each bore",
                "yields.csv",
                List.of("bore", "mean (ML/yr)", "mean (L/s)"),
                result.bores().stream()
                        .map(bore -> new CsvLineCells()
                                .text(bore.name())
                                .number(DischargeUnit.MEGALITRES_PER_YEAR.of(bore.yield()), 2)
                                .number(DischargeUnit.LITRES_PER_SECOND.of(bore.yield()), 3)
                                .shown())
                        .toList(),
                List.of("Over all the time for which bores share" + untilWhen()
                        + ", with that in which a bore rests. A megalitre (ML) is a million litres; 1 L/s"
                        + " all the year round is 31.5576 ML/yr."));
    }

    private PlanningTable prices() {
        List<String> header = List.of(
                "limit",
                "unit",
                "tightest on",
                "left by superposition",
                "left by the simulator",
                "kept free for the numerical error",
                "price",
                "unit of the price",
                "gain by " + AllocationResult.STEP + " of the unit (" + result.goalUnit() + ")",
                "remark");
        return new PlanningTable(
                "prices",
                "What is left of each limit, and what more of it would be worth",
                "prices.csv",
                header,
                result.requirements().stream().map(this::price).toList(),
                notesOnPrices());
    }

    private List<String> price(AllocationResult.Kept one) {
        CsvLineCells cells = new CsvLineCells().text(one.name()).text(one.unit());
        if (Double.isNaN(one.day())) {
            cells.empty();
        } else {
            cells.date(result.run().calendar().at(one.day()));
        }
        return cells.number(one.predicted(), 4)
                .number(one.simulated(), 4)
                .number(one.reserve(), 4)
                .number(one.price(), 4)
                .text(result.priceUnit(one))
                .number(one.gain(), 4)
                .text(one.remark())
                .shown();
    }

    private List<String> notesOnPrices() {
        String worth = switch (result.asked().goal()) {
            case LARGEST_YIELD -> "how much more all bores together could take, on average over the years";
            case LEAST_ENERGY -> "how much energy lifting the same water would save";
            case LEAST_EFFECT_ON_SPRINGS ->
                "by how much less heads at the springs would fall, on average over the springs";
        };
        List<String> notes = new ArrayList<>();
        notes.add(
                "Left is how far the worst day stays within what the document allows; below zero the limit is broken. The"
                        + " numerical error is kept free of it.");
        notes.add("The price of a limit says " + worth
                + ", if it alone allowed one unit more and everything else stayed. It"
                + " holds for small changes: the column beside it says what " + AllocationResult.STEP
                + " of the unit more gains, found anew with all"
                + " other limits. Where the price is 0 the limit decides nothing.");
        if (!result.asked().seniority().isEmpty()) {
            notes.add(
                    "Holders who come first take their part of what a limit allows more; where that costs the others more than"
                            + " it yields, price and gain are below zero.");
        }
        return notes;
    }

    private PlanningTable trading() {
        return new PlanningTable(
                TRADING,
                "What 1 ML/yr less at one bore allows at another",
                "trading.csv",
                List.of("place", "1 ML/yr less at", "allows at", "more (ML/yr)"),
                result.exchanges().stream()
                        .map(one -> new CsvLineCells()
                                .text(one.place())
                                .text(one.from())
                                .text(one.to())
                                .number(one.rate(), 3)
                                .shown())
                        .toList(),
                List.of("Both changes last as long as bores share" + untilWhen()
                        + ", and leave the drawdown at the place at the end of that time as it is. A trade has to"
                        + " suit every place: the smallest figure of the two bores counts."));
    }

    private String untilWhen() {
        return result.endsEarly() ? " (until " + result.lastDate() + ")" : "";
    }

    private PlanningTable conflicts() {
        return new PlanningTable(
                "conflicts",
                "Limits that contradict what is wanted, and the smallest change that makes both possible",
                "conflicts.csv",
                List.of("limit", "allowed", "would have to be", "gives way by", "unit"),
                result.relaxed().stream()
                        .map(one -> new CsvLineCells()
                                .text(one.name())
                                .number(one.allowed(), 4)
                                .number(one.needed(), 4)
                                .number(one.amount(), 4)
                                .text(one.unit())
                                .shown())
                        .toList(),
                List.of("The rates on this page are those with these limits changed. " + whyWanted()));
    }

    private String whyWanted() {
        boolean total = result.asked().total().isPresent() && result.asked().goal() != Goal.LARGEST_YIELD;
        String wanted = total ? "the total and the minimums of holders" : "the minimums of holders";
        return "Either the limits change as the table says, or less is taken than " + wanted + " ask for.";
    }

    private PlanningTable uncounted() {
        return new PlanningTable(
                "uncounted",
                "Limits that were not counted: judge them by what the simulator says, or by a run with these rates",
                UncountedCsv.NAME,
                UncountedCsv.HEADER,
                result.uncounted().stream()
                        .map(one -> UncountedCsv.line(one).shown())
                        .toList());
    }
}

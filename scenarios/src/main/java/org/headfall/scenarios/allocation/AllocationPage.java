package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.headfall.scenarios.planning.PlanningPage;
import org.headfall.scenarios.planning.PlanningRates;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.Significant;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.StatedRate;

/** An allocation as a page: the answer, the map, rates over time, the tables of its files, and when its figures hold. */
final class AllocationPage {

    /** Bores and limits that a sentence names; the tables name all. */
    private static final int MOST_NAMED = 8;

    private final AllocationResult result;
    private final AllocationSpecification asked;

    private AllocationPage(AllocationResult result) {
        this.result = result;
        asked = result.asked();
    }

    /**
     * The page.
     *
     * @param result the allocation
     * @param tables its tables
     */
    static PlanningPage of(AllocationResult result, List<PlanningTable> tables) {
        AllocationPage page = new AllocationPage(result);
        AllocationMap map = new AllocationMap(result, table(tables, "yields"));
        return new PlanningPage(
                "How bores best share the water",
                result.run().title(),
                result.run().provenance().toolVersion(),
                page.answers(),
                List.of(new PlanningRates(
                        map.x(),
                        map.y(),
                        map.inside(),
                        map.places(),
                        new AllocationSteps(result, map).of(table(tables, "rates")))),
                tables.stream()
                        .map(table -> table.id().equals(AllocationTables.TRADING) ? BestTrades.of(table) : table)
                        .toList(),
                page.conditions(),
                List.of());
    }

    private static PlanningTable table(List<PlanningTable> tables, String id) {
        return tables.stream()
                .filter(table -> table.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private List<String> answers() {
        List<String> answers = new ArrayList<>();
        if (!result.relaxed().isEmpty()) {
            answers.add(AllocationWords.CONTRADICTION + " "
                    + named(result.relaxed().stream()
                            .map(AllocationWords::gaveWay)
                            .toList()));
            answers.add("Rates and prices are those with these limits changed by that much.");
        }
        AllocationWords.unfinished(result.rounds()).forEach(sentence -> answers.add(sentence + "."));
        answers.add(AllocationWords.mean(result) + ", all bores together.");
        answers.add(question());
        answers.addAll(wishes());
        answers.addAll(whoTakes());
        answers.addAll(whatBinds());
        result.evenly().forEach(some -> answers.add(AllocationWords.evenly(some) + "."));
        answers.add(AllocationWords.keptFree(result) + ".");
        result.uncounted().forEach(limit -> answers.add("Not counted: " + limit.sentence() + "."));
        return answers;
    }

    /** Some of the parts in one sentence, and how many more there are. */
    private static String named(List<String> parts) {
        String all = String.join("; ", parts.subList(0, Math.min(MOST_NAMED, parts.size())));
        return parts.size() > MOST_NAMED
                ? all + "; and " + (parts.size() - MOST_NAMED) + " more, see the tables."
                : all + ".";
    }

    /** Bores with what they take, those that take most first, and those that rest. */
    private List<String> whoTakes() {
        List<String> sentences = new ArrayList<>();
        List<String> taking = result.bores().stream()
                .filter(bore -> !bore.rests())
                .sorted(Comparator.comparingDouble(AllocationResult.BoreRates::yield)
                        .reversed())
                .map(AllocationWords::mean)
                .toList();
        if (!taking.isEmpty()) {
            sentences.add(named(taking));
        }
        List<String> resting = result.bores().stream()
                .filter(AllocationResult.BoreRates::rests)
                .map(AllocationResult.BoreRates::name)
                .toList();
        if (!resting.isEmpty()) {
            sentences.add("Bores that rest throughout: " + named(resting));
        }
        return sentences;
    }

    private List<String> whatBinds() {
        List<String> sentences = new ArrayList<>();
        List<AllocationResult.Kept> binding = result.binding();
        binding.stream().limit(MOST_NAMED).forEach(one -> sentences.add("Binds: " + one.name() + worth(one) + "."));
        if (binding.size() > MOST_NAMED) {
            sentences.add("Further limits and lowest levels bind: " + (binding.size() - MOST_NAMED)
                    + ", see the table of prices.");
        }
        if (binding.isEmpty() && result.relaxed().isEmpty()) {
            sentences.add("No limit and no lowest level binds.");
        }
        List<String> atLargest = result.bores().stream()
                .filter(this::isAtLargest)
                .map(AllocationResult.BoreRates::name)
                .toList();
        if (!atLargest.isEmpty()) {
            sentences.add(String.format(
                    Locale.ROOT,
                    "At the largest rate that the document allows one bore, %.1f L/s, at least for a time: %s",
                    DischargeUnit.LITRES_PER_SECOND.of(asked.largestRate()),
                    named(atLargest)));
        }
        return sentences;
    }

    /** Whether a bore takes its largest rate at some time, to what the table of rates shows. */
    private boolean isAtLargest(AllocationResult.BoreRates bore) {
        double shown = DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(5e-7);
        return bore.rates().stream().anyMatch(rate -> rate >= asked.largestRate() - shown);
    }

    private String worth(AllocationResult.Kept one) {
        String remark = one.remark().isEmpty() ? "" : "; " + one.remark();
        if (one.price() == 0) {
            return ", where nothing more is left; more of it alone would gain nothing" + remark;
        }
        String step = ". " + AllocationResult.STEP + " " + one.unitOfChange() + " more of it";
        String gain = Significant.text(Math.abs(one.gain())) + " " + result.goalUnit();
        String worth = one.gain() < 0
                ? " would cost " + gain + " in all, as holders who come first take more"
                : switch (asked.goal()) {
                    case LARGEST_YIELD -> " would let the bores take " + gain + " more in all";
                    case LEAST_ENERGY -> " would save " + gain;
                    case LEAST_EFFECT_ON_SPRINGS -> " would spare " + gain + ", on average";
                };
        return step + worth + " (price " + Significant.text(one.price()) + " " + result.priceUnit(one) + ")" + remark;
    }

    private String question() {
        String bores = asked.bores().size() == 1 ? "1 bore" : asked.bores().size() + " bores";
        String goal = switch (asked.goal()) {
            case LARGEST_YIELD ->
                "as much water from " + bores + " as all counted limits allow" + total(", ", " in all at most");
            case LEAST_ENERGY -> total("", " in all from ") + bores + ", lifted with the least energy";
            case LEAST_EFFECT_ON_SPRINGS ->
                total("", " in all from ") + bores + ", with the least fall of head at the springs";
        };
        return String.format(
                Locale.ROOT,
                "Asked for: %s, from %s until %s%s, no bore more than %.1f L/s; %s.",
                goal,
                date(0),
                result.lastDate(),
                result.endsEarly()
                        ? " (limits are kept until " + date(result.run().endDay()) + " all the same)"
                        : "",
                DischargeUnit.LITRES_PER_SECOND.of(asked.largestRate()),
                changes());
    }

    private String total(String before, String after) {
        return asked.total().map(total -> before + stated(total) + after).orElse("");
    }

    private static String stated(StatedRate rate) {
        return String.format(Locale.ROOT, "%.2f %s", rate.value() * rate.ofOne(), rate.unit());
    }

    private String date(double day) {
        return result.run().calendar().at(day).toLocalDate().toString();
    }

    private String changes() {
        String seasons = asked.seasons().isEmpty()
                ? "rates"
                : "rates of their own in the seasons "
                        + asked.seasons().stream().map(Season::words).collect(Collectors.joining(" and "));
        return asked.yearsAlike() == 0
                ? seasons + " that never change over the years"
                : seasons + " that may change every "
                        + (asked.yearsAlike() == 1 ? "year" : asked.yearsAlike() + " years");
    }

    private List<String> wishes() {
        List<String> wishes = new ArrayList<>();
        if (!asked.minimums().isEmpty()) {
            wishes.add("At least, in every season and year: "
                    + named(asked.minimums().stream()
                            .map(one -> one.holder() + " " + stated(one.rate()))
                            .toList()));
        }
        if (!asked.seniority().isEmpty()) {
            wishes.add("Holders whose yields come first, in this order: " + named(asked.seniority()));
        }
        return wishes;
    }

    private List<String> conditions() {
        List<String> conditions = new ArrayList<>();
        conditions.add(
                "Heads are those of rates added up, which is exact while the aquifer stays full and other bores keep to given"
                        + " rates. What springs, free-flowing bores and pumps give less at these rates is counted by running them. "
                        + AllocationWords.rounds(result.rounds()) + ".");
        conditions.add(
                "Levels and limits are looked at on all days for which the document writes bores, just before rates change, and"
                        + " on each day on which another bore, a boundary or recharge changes. A rate is steady in each stretch of time.");
        conditions.add(
                "Prices, gains and what bores can trade hold for small changes. Where a spring or a bore would stop or begin to flow,"
                        + " allocate again with the limit changed.");
        if (asked.goal() == Goal.LEAST_ENERGY) {
            conditions.add(
                    "Where water stands above the level that it is delivered at, it is lifted by nothing. Then no small change of"
                            + " the rates takes less energy; with several such bores, other rates far from these might.");
        }
        conditions.add(
                "The numerical error that is kept free is that of the time steps or of superposing. What the grid, far boundaries and"
                        + " the picture of the aquifer are off by is not in it: run the document with these rates and --doubts.");
        return conditions;
    }
}

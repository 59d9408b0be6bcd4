package org.headfall.scenarios.allocation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.planning.RateSteps;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.scenario.Season;

/**
 * Rates over time as charts, those that rest left out, a line a season: it holds from the first time of the season at a rate to
 * the first at the next, and falls to nothing when bores stop sharing.
 */
final class AllocationSteps {

    /** Years between dates below a chart, of which at most {@link #MOST_TICKS} are shown, so that they fit on a telephone. */
    private static final int[] YEARS_OF_TICKS = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

    private static final double[] ROUND = {1, 1.5, 2, 3, 4, 5, 6, 8, 10};

    private static final int MOST_TICKS = 6;

    private final AllocationResult result;
    private final AllocationMap map;
    private final RunCalendar calendar;
    private final double endDay;

    AllocationSteps(AllocationResult result, AllocationMap map) {
        this.result = result;
        this.map = map;
        calendar = result.run().calendar();
        endDay = result.run().endDay();
    }

    /**
     * The charts.
     *
     * @param rates the table of rates: date, and a column a bore
     */
    RateSteps of(PlanningTable rates) {
        return new RateSteps(ticks(), seasons(), stretches(rates), bores(rates));
    }

    /** A round number that no rate of a bore is above (L/s), which takes something. */
    private static double most(AllocationResult.BoreRates bore) {
        double most = bore.rates().stream()
                .mapToDouble(DischargeUnit.LITRES_PER_SECOND::of)
                .max()
                .orElse(0);
        return roundedUp(most);
    }

    /** The next of the round numbers that is not below a rate. */
    private static double roundedUp(double rate) {
        double power = Math.pow(10, Math.floor(Math.log10(rate)));
        return DoubleStream.of(ROUND)
                .map(round -> round * power)
                .filter(round -> round >= rate * (1 - 1e-9))
                .findFirst()
                .orElse(rate);
    }

    private List<String> seasons() {
        List<Season> seasons = result.asked().seasons();
        return seasons.isEmpty()
                ? List.of("")
                : seasons.stream().map(Season::words).toList();
    }

    private List<RateSteps.Stretch> stretches(PlanningTable rates) {
        double[] days = new RateSchedule(result).days();
        List<RateSteps.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            String until = i + 1 < days.length
                    ? rates.rows().get(i + 1).get(0)
                    : calendar.at(endDay).toLocalDate().toString();
            stretches.add(
                    new RateSteps.Stretch(days[i] / endDay, rates.rows().get(i).get(0) + " until " + until));
        }
        return stretches;
    }

    private List<RateSteps.Bore> bores(PlanningTable rates) {
        List<RateSteps.Bore> bores = new ArrayList<>();
        for (int b = 0; b < result.bores().size(); b++) {
            int column = b + 1;
            AllocationResult.BoreRates bore = result.bores().get(b);
            if (bore.rests()) {
                continue;
            }
            bores.add(new RateSteps.Bore(
                    bore.name(),
                    map.mean(bore) + " on average",
                    most(bore),
                    IntStream.range(0, seasons().size())
                            .mapToObj(season -> line(bore, season))
                            .toList(),
                    rates.rows().stream().map(row -> row.get(column) + " L/s").toList()));
        }
        return bores;
    }

    private List<RateSteps.Step> line(AllocationResult.BoreRates bore, int season) {
        RateBlocks blocks = result.blocks();
        int[] groups = IntStream.range(0, blocks.groups())
                .filter(group -> blocks.seasons().get(group) == season)
                .toArray();
        List<RateSteps.Step> line = new ArrayList<>();
        for (int i = 0; i < groups.length; i++) {
            double to = i + 1 < groups.length
                    ? blocks.startOf(groups[i + 1])
                    : result.asked().days();
            line.add(new RateSteps.Step(
                    blocks.startOf(groups[i]) / endDay,
                    to / endDay,
                    DischargeUnit.LITRES_PER_SECOND.of(bore.rates().get(groups[i]))));
        }
        if (result.endsEarly()) {
            line.add(new RateSteps.Step(result.asked().days() / endDay, 1, 0));
        }
        return line;
    }

    private List<RateSteps.Tick> ticks() {
        LocalDate start = calendar.start().toLocalDate();
        LocalDate end = calendar.at(endDay).toLocalDate();
        int years = end.getYear() - start.getYear();
        int step = IntStream.of(YEARS_OF_TICKS)
                .filter(one -> years / one < MOST_TICKS)
                .findFirst()
                .orElse(years);
        List<RateSteps.Tick> ticks = new ArrayList<>();
        for (int year = start.getYear(); year <= end.getYear(); year++) {
            double at = calendar.day(LocalDate.of(year, 1, 1).atStartOfDay()) / endDay;
            if (year % step == 0 && at >= 0 && at <= 1) {
                ticks.add(new RateSteps.Tick(at, String.valueOf(year)));
            }
        }
        return ticks;
    }
}

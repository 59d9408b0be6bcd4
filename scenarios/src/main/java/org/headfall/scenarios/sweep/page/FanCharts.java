package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.headfall.scenarios.sweep.figures.HeadOverTime;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Share;

/** Draws heads over time: the median of all runs, and the band between the heads that a tenth lie below and above. */
final class FanCharts {

    private static final double PER_CENT = 100;

    /** More small charts than this are not compared any more. */
    private static final int MOST_CHARTS = 12;

    private final SweepTable table;
    private final SweepAnswers answers;

    FanCharts(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    /** One chart for each place and choice; none while no run has heads to draw. */
    List<Chart.Group> all() {
        if (answers.choices().isEmpty()) {
            return List.of();
        }
        Map<String, List<HeadOverTime>> byPlace = new LinkedHashMap<>();
        table.sweep().figures().stream()
                .filter(HeadOverTime.class::isInstance)
                .map(HeadOverTime.class::cast)
                .forEach(head -> byPlace.computeIfAbsent(head.place(), place -> new ArrayList<>())
                        .add(head));
        List<Chart.Group> groups = new ArrayList<>();
        byPlace.forEach((place, heads) -> groups.add(group(place, heads)));
        return groups;
    }

    /** Bands of the runs of a choice at each time. */
    private record Fan(String choice, int runs, Bands bands) {}

    private Chart.Group group(String place, List<HeadOverTime> heads) {
        List<Fan> fans = new ArrayList<>();
        Map<String, List<Integer>> choices = answers.choices();
        choices.forEach((choice, places) -> {
            if (fans.size() < MOST_CHARTS) {
                fans.add(fan(choice, heads, places));
            }
        });
        ChartScale across = ChartDrawing.across(
                heads.stream().mapToDouble(HeadOverTime::years).toArray());
        ChartScale up = ChartDrawing.up(
                fans.stream().flatMapToDouble(fan -> fan.bands().edges()).toArray());
        double[] x =
                heads.stream().mapToDouble(head -> across.place(head.years())).toArray();
        List<Chart> charts =
                fans.stream().map(fan -> chart(fan, place, x, across, up)).toList();
        String rest =
                choices.size() > MOST_CHARTS ? " The first " + MOST_CHARTS + " of " + choices.size() + " choices." : "";
        return new Chart.Group("Head at " + place + " over time", note(fans) + rest, charts);
    }

    private Fan fan(String choice, List<HeadOverTime> heads, List<Integer> places) {
        List<double[]> samples = heads.stream()
                .map(head -> {
                    double[] column = table.figure(head.name());
                    return places.stream().mapToDouble(run -> column[run]).toArray();
                })
                .toList();
        return new Fan(choice, places.size(), Bands.of(samples));
    }

    private static Chart chart(Fan fan, String place, double[] x, ChartScale across, ChartScale up) {
        double[] low = Arrays.stream(fan.bands().low()).map(up::place).toArray();
        double[] high = Arrays.stream(fan.bands().high()).map(up::place).toArray();
        return new ChartDrawing()
                .band(x, low, high)
                .axes(across, up)
                .line("low", x, low)
                .line("high", x, high)
                .line(
                        "middle",
                        x,
                        Arrays.stream(fan.bands().middle()).map(up::place).toArray())
                .named(
                        fan.choice().isEmpty() ? "Head at " + place : fan.choice(),
                        "yr after the start",
                        "head (m above datum)");
    }

    /** How to read it, and how sure the edges of the band are. */
    private static String note(List<Fan> fans) {
        int runs = fans.stream().mapToInt(Fan::runs).min().orElse(0);
        String edges = "";
        if (runs > 0) {
            Share tenth = new Share((int) Math.round(Bands.TAIL * runs), runs);
            edges = String.format(
                    Locale.ROOT,
                    " From %d runs%s: below the lower edge lie, with 95 %% certainty as far as sampling goes, between %.0f"
                            + " and %.0f %% of what may be.",
                    runs,
                    fans.size() > 1 ? " or more each" : "",
                    PER_CENT * tenth.low(),
                    PER_CENT * tenth.high());
        }
        return "Line in the middle: half of the runs lie below. Band: a tenth of the runs lie below it, a tenth above."
                + edges;
    }
}

package org.headfall.scenarios.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.Station.BoreSite;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;

/**
 * Springs, and bores left to flow by themselves, that give no water on any recorded day since head never reaches their
 * outlet: what never flows never stops, so that nothing else says so of an outlet level with a wrong digit.
 */
public final class NeverFlowing {

    private NeverFlowing() {}

    /** One for each, in the order of the stations. */
    public static List<Doubt> of(FinishedRun run) {
        List<Doubt> doubts = new ArrayList<>();
        List<Station> stations = run.description().stations();
        for (int i = 0; i < stations.size(); i++) {
            Station station = stations.get(i);
            StationSeries series = run.recording().series().get(i);
            if (isLeftToFlow(station) && Arrays.stream(series.discharge()).noneMatch(flow -> flow > 0)) {
                double highest = Arrays.stream(series.head()).max().orElse(Double.NaN);
                station.outletHead().stream()
                        .filter(outlet -> highest < outlet)
                        .forEach(outlet -> doubts.add(doubt(station, outlet - highest)));
            }
        }
        return doubts;
    }

    private static boolean isLeftToFlow(Station station) {
        return station instanceof Station.SpringSite
                || (station instanceof BoreSite bore && bore.use() == BoreSite.Use.FREE_FLOWING);
    }

    private static Doubt doubt(Station station, double lacks) {
        return new Doubt(
                station.name(),
                String.format(
                        Locale.ROOT,
                        "never flows: on every recorded day head stays below its outlet, %.2f m, by %.2f m at least. If it should"
                                + " flow, look at the level of its outlet.",
                        station.outletLevel().orElse(Double.NaN),
                        lacks));
    }
}

package org.headfall.scenarios.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;

/**
 * Where and since when head lies below the aquifer top. There the aquifer is no longer full: it drains, storativity is
 * about a thousand times larger, and every figure that depends on such a place is in doubt.
 *
 * @param cells number of cells in which that was ever so
 * @param area area of those cells (m²)
 * @param cellsAtStart how many of them were so at the start already
 * @param firstDay first recorded day after the start on which a further cell joined, if any (d)
 * @param stations stations where it was ever so
 */
public record Confinement(
        int cells, double area, int cellsAtStart, OptionalDouble firstDay, List<StationBelowTop> stations) {

    /** Copies the list. */
    public Confinement {
        stations = List.copyOf(stations);
    }

    /**
     * A station with head below the aquifer top.
     *
     * @param station its name
     * @param sinceDay first day, on the straight line between records (d)
     * @param lowest largest depth of head below the aquifer top (m)
     */
    public record StationBelowTop(String station, double sinceDay, double lowest) {}

    /** Whether the aquifer stayed confined everywhere. */
    public boolean everywhere() {
        return cells == 0 && stations.isEmpty();
    }

    /**
     * Finds it in a recording.
     *
     * @param description the run
     * @param recording what it recorded
     * @return where and since when
     */
    public static Confinement of(RunDescription description, Recording recording) {
        double[] since = recording.notConfinedSince();
        int cells = 0;
        int atStart = 0;
        double area = 0;
        double firstDay = Double.POSITIVE_INFINITY;
        for (int cell = 0; cell < since.length; cell++) {
            if (!Double.isNaN(since[cell])) {
                cells++;
                area += description.grid().area(cell);
                if (since[cell] <= recording.startDay()) {
                    atStart++;
                } else {
                    firstDay = Math.min(firstDay, since[cell]);
                }
            }
        }
        return new Confinement(
                cells,
                area,
                atStart,
                Double.isFinite(firstDay) ? OptionalDouble.of(firstDay) : OptionalDouble.empty(),
                stationsBelowTop(description, recording));
    }

    private static List<StationBelowTop> stationsBelowTop(RunDescription description, Recording recording) {
        List<StationBelowTop> found = new ArrayList<>();
        for (int i = 0; i < description.stations().size(); i++) {
            Station station = description.stations().get(i);
            StationSeries series = recording.series().get(i);
            double top = StationTop.of(description, station);
            double[] head = series.head();
            Crossing.below(series.days(), head, top, 0)
                    .ifPresent(day -> found.add(new StationBelowTop(station.name(), day, depthBelow(head, top))));
        }
        return found;
    }

    private static double depthBelow(double[] head, double top) {
        double depth = 0;
        for (double value : head) {
            depth = Math.max(depth, top - value);
        }
        return depth;
    }
}

package org.headfall.scenarios.comparison;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;

/** What the places of two runs differ in: where those of one name are, which springs there are, and heads at the start. */
final class PlaceDifferences {

    /** Heads at the start nearer than this to each other are the same (m): a grid refined elsewhere moves them as much. */
    private static final double NOTHING = 0.05;

    private final FinishedRun first;
    private final FinishedRun second;

    PlaceDifferences(FinishedRun first, FinishedRun second) {
        this.first = first;
        this.second = second;
    }

    /** What differs, in words. */
    List<String> found() {
        List<String> found = new ArrayList<>();
        named("places with the same name", moved()).ifPresent(found::add);
        named("springs that only one of them has", singleSprings()).ifPresent(found::add);
        start().ifPresent(found::add);
        return found;
    }

    private static Optional<String> named(String what, NavigableSet<String> names) {
        return names.isEmpty() ? Optional.empty() : Optional.of(what + " (" + String.join(", ", names) + ")");
    }

    /** Names of the places that are not the same place in both runs. */
    private NavigableSet<String> moved() {
        NavigableSet<String> moved = new TreeSet<>();
        RunDescription another = second.description();
        for (Station station : first.description().stations()) {
            int other = another.stationIndex(station.name());
            if (other >= 0 && !isSame(station, another.stations().get(other))) {
                moved.add(station.name());
            }
        }
        return moved;
    }

    private NavigableSet<String> singleSprings() {
        NavigableSet<String> single = springs(first);
        springs(second).stream().filter(name -> !single.remove(name)).toList().forEach(single::add);
        return single;
    }

    private static NavigableSet<String> springs(FinishedRun run) {
        return run.description().springs().stream().map(Station::name).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Runs that begin on one day at other heads differ by more than what happens in them. */
    private Optional<String> start() {
        if (!startDay(first).equals(startDay(second))) {
            return Optional.empty();
        }
        double largest = NOTHING;
        String place = "";
        for (Station station : first.description().stations()) {
            double difference = Math.abs(headAtStart(first, station.name()) - headAtStart(second, station.name()));
            if (difference > largest) {
                largest = difference;
                place = station.name();
            }
        }
        return place.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        String.format(Locale.ROOT, "heads at the start (by up to %.2f m, at %s)", largest, place));
    }

    private static LocalDateTime startDay(FinishedRun run) {
        return run.description().calendar().start();
    }

    /** NaN in a run that does not have the place. */
    private static double headAtStart(FinishedRun run, String station) {
        int index = run.description().stationIndex(station);
        return index < 0 ? Double.NaN : run.recording().series().get(index).head()[0];
    }

    private static boolean isSame(Station one, Station other) {
        boolean place = one.x() == other.x() && one.y() == other.y();
        if (one instanceof Station.SpringSite spring && other instanceof Station.SpringSite another) {
            return place && spring.outlet() == another.outlet() && spring.conductance() == another.conductance();
        }
        return place && one.getClass() == other.getClass();
    }
}

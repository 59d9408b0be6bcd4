package org.headfall.scenarios.comparison;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;

/** What the second run means for a station: when it stops flowing and when its pump falls dry, beside the first run. */
final class Meaning {

    private final FinishedRun first;
    private final FinishedRun second;

    Meaning(FinishedRun first, FinishedRun second) {
        this.first = first;
        this.second = second;
    }

    /** In words; empty if neither happens in the second run. */
    String of(String station) {
        List<String> sentences = new ArrayList<>();
        add(sentences, "stops flowing by itself", stops(first, station), stops(second, station));
        add(sentences, "water falls to the pump intake", dry(first, station), dry(second, station));
        return String.join("; ", sentences);
    }

    private void add(List<String> sentences, String event, OptionalDouble inFirst, OptionalDouble inSecond) {
        if (inSecond.isPresent()) {
            String other = inFirst.isPresent()
                    ? ", in the first run on " + date(first, inFirst.getAsDouble())
                    : ", in the first run not";
            sentences.add(event + " on " + date(second, inSecond.getAsDouble()) + other);
        }
    }

    private static LocalDate date(FinishedRun run, double day) {
        RunCalendar calendar = run.description().calendar();
        return calendar.at(day).toLocalDate();
    }

    private static OptionalDouble stops(FinishedRun run, String station) {
        return run.findings().artesianHead().stream()
                .filter(found -> found.station().equals(station))
                .map(ArtesianHead::flowByItself)
                .filter(FlowByItself.Stops.class::isInstance)
                .mapToDouble(flow -> ((FlowByItself.Stops) flow).day())
                .findFirst();
    }

    private static OptionalDouble dry(FinishedRun run, String station) {
        int index = run.description().stationIndex(station);
        if (index < 0
                || !(run.description().stations().get(index) instanceof Station.BoreSite bore)
                || bore.pumpIntake().isEmpty()) {
            return OptionalDouble.empty();
        }
        StationSeries series = run.recording().series().get(index);
        return Crossing.below(
                series.days(), series.levelInBore(), bore.pumpIntake().getAsDouble(), 0);
    }
}

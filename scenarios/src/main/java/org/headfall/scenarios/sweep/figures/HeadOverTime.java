package org.headfall.scenarios.sweep.figures;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.FinishedRun;

/**
 * Head of a place at one of several times that are kept together, so that the spread of heads over time can be drawn.
 *
 * @param place name of the bore, spring or point
 * @param day the time (d since the start)
 */
public record HeadOverTime(String place, double day) implements KeptFigure {

    /** Its name in a sweep document. */
    public static final String WORDS = "head over time";

    /** Times after the start: enough for a curve, few enough for the columns of a table. */
    private static final int TIMES = 24;

    /**
     * Heads of a place from the start to the end.
     *
     * @param place name of the place
     * @param endDay last day (d since the start)
     */
    public static List<KeptFigure> of(String place, double endDay) {
        return IntStream.rangeClosed(0, TIMES)
                .mapToObj(i -> (KeptFigure) new HeadOverTime(place, i * endDay / TIMES))
                .toList();
    }

    /** The time (yr after the start). */
    public double years() {
        return day / RunCalendar.DAYS_PER_YEAR;
    }

    @Override
    public String name() {
        return String.format(Locale.ROOT, "head at %s, %.2f yr after the start", place, years());
    }

    @Override
    public String unit() {
        return "m above datum";
    }

    /** Between records on a straight line; NaN after the end of a run that is shorter than the base scenario. */
    @Override
    public double valueIn(FinishedRun run) {
        int station = run.description().stationIndex(place);
        return station < 0 ? Double.NaN : run.recording().series().get(station).headAt(day);
    }
}

package org.headfall.scenarios.results;

import java.util.OptionalDouble;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.recording.RunCalendar;

/** Whether a place flows by itself, in words. */
public final class FlowWords {

    private FlowWords() {}

    /**
     * Words for a table cell.
     *
     * @param flow whether and until when it flows
     * @param calendar calendar of the run
     * @return such as "until 2041-03-17, again from 2046-02-01"
     */
    public static String of(FlowByItself flow, RunCalendar calendar) {
        if (flow instanceof FlowByItself.Stops stops) {
            return "until " + date(calendar, stops.day()) + again(", again from ", stops.resumesDay(), calendar)
                    + (stops.resumesDay().isPresent() && !stops.flowsAtEnd() ? ", not at the end" : "");
        }
        if (flow instanceof FlowByItself.NotAtStart not) {
            return "not at the start" + again(", from ", not.startsDay(), calendar);
        }
        return flow instanceof FlowByItself.Throughout ? "throughout the run" : "no outlet level given";
    }

    private static String again(String words, OptionalDouble day, RunCalendar calendar) {
        return day.isPresent() ? words + date(calendar, day.getAsDouble()) : "";
    }

    private static String date(RunCalendar calendar, double day) {
        return calendar.at(day).toLocalDate().toString();
    }
}

package org.headfall.scenarios.results;

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
     * @return such as "until 2041-03-17"
     */
    public static String of(FlowByItself flow, RunCalendar calendar) {
        if (flow instanceof FlowByItself.Stops stops) {
            return stops(stops, calendar);
        }
        if (flow instanceof FlowByItself.NotAtStart not) {
            return notAtStart(not, calendar);
        }
        return flow instanceof FlowByItself.Throughout ? "throughout the run" : "no outlet level given";
    }

    private static String stops(FlowByItself.Stops stops, RunCalendar calendar) {
        String first = date(calendar, stops.day());
        return stops.resumesDay().isEmpty()
                ? "until " + first
                : "with breaks: stops first on " + first + ", flows again from "
                        + date(calendar, stops.resumesDay().getAsDouble())
                        + (stops.flowsAtEnd() ? ", flows at the end" : ", does not flow at the end");
    }

    private static String notAtStart(FlowByItself.NotAtStart not, RunCalendar calendar) {
        return "not at the start"
                + (not.startsDay().isPresent()
                        ? ", flows first from " + date(calendar, not.startsDay().getAsDouble())
                        : ", nor later");
    }

    private static String date(RunCalendar calendar, double day) {
        return calendar.at(day).toLocalDate().toString();
    }
}

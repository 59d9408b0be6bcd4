package org.headfall.scenarios.comparison;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.results.FinishedRun;

/** When two runs, each with a calendar of its own, can be compared. */
final class CommonDates {

    private final NavigableSet<LocalDate> dates;
    private final Set<LocalDateTime> moments;

    CommonDates(FinishedRun first, FinishedRun second) {
        dates = dates(first, second);
        moments = recorded(first);
        moments.retainAll(recorded(second));
        dates.forEach(date -> moments.add(date.atStartOfDay()));
    }

    /** The first, last and report dates of either run that lie within both. */
    NavigableSet<LocalDate> dates() {
        return Collections.unmodifiableNavigableSet(dates);
    }

    /** What both runs record, and {@link #dates()}. */
    Set<LocalDateTime> moments() {
        return Collections.unmodifiableSet(moments);
    }

    /** The date of a day of a run. */
    static LocalDate date(FinishedRun run, double day) {
        return run.description().calendar().at(day).toLocalDate();
    }

    /** The day of a run that a date begins on. */
    static double day(FinishedRun run, LocalDate date) {
        return day(run, date.atStartOfDay());
    }

    /** The day of a run at a moment. */
    static double day(FinishedRun run, LocalDateTime moment) {
        return run.description().calendar().day(moment);
    }

    private static NavigableSet<LocalDate> dates(FinishedRun first, FinishedRun second) {
        NavigableSet<LocalDate> dates = new TreeSet<>();
        for (FinishedRun run : List.of(first, second)) {
            RunDescription description = run.description();
            dates.add(date(run, 0));
            description.reportDates().forEach(report -> dates.add(date(run, report.day())));
            dates.add(date(run, run.recording().endDay()));
        }
        dates.removeIf(date -> !lasts(first, date) || !lasts(second, date));
        return dates;
    }

    private static boolean lasts(FinishedRun run, LocalDate date) {
        double day = day(run, date);
        return day >= run.recording().startDay() && day <= run.recording().endDay();
    }

    private static Set<LocalDateTime> recorded(FinishedRun run) {
        return Arrays.stream(run.recording().days())
                .mapToObj(run.description().calendar()::at)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}

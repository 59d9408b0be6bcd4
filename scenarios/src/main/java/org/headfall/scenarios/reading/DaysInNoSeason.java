package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.scenario.Season;

/** Finds days of the year that seasons leave out. */
final class DaysInNoSeason {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
    /** A year with a 29 February, which is left out as easily as any other day. */
    private static final int LEAP_YEAR = 2028;

    private DaysInNoSeason() {}

    /** The days in words, such as {@code 1 April to 14 May, 29 February}; absent if every day is in a season. */
    static Optional<String> of(List<Season> seasons) {
        LocalDate day = seasons.get(0).from().atYear(LEAP_YEAR);
        List<String> stretches = new ArrayList<>();
        int days = LocalDate.ofYearDay(LEAP_YEAR, 1).lengthOfYear();
        int first = -1;
        for (int i = 0; i <= days; i++) {
            boolean left = i < days && isInNone(seasons, at(day, i));
            if (left && first < 0) {
                first = i;
            } else if (!left && first >= 0) {
                String from = DAY.format(at(day, first));
                stretches.add(first == i - 1 ? from : from + " to " + DAY.format(at(day, i - 1)));
                first = -1;
            }
        }
        return stretches.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", stretches));
    }

    private static boolean isInNone(List<Season> seasons, MonthDay day) {
        return seasons.stream().noneMatch(season -> season.has(day));
    }

    /** So many days on, around the end of the year. */
    private static MonthDay at(LocalDate day, int later) {
        int days = day.lengthOfYear();
        return MonthDay.from(LocalDate.ofYearDay(LEAP_YEAR, (day.getDayOfYear() - 1 + later) % days + 1));
    }
}

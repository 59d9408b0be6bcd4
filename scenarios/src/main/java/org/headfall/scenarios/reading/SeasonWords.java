package org.headfall.scenarios.reading;

import java.time.DateTimeException;
import java.time.Month;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.Season;
import org.jspecify.annotations.Nullable;

/** Reads parts of every year, such as {@code {from: 1 October, to: 31 March}}. */
final class SeasonWords {
    private static final Pattern DAY_AND_MONTH = Pattern.compile("\\s*(\\d{1,2})\\s+(\\p{L}+)\\s*");
    private static final String ALLOWED = "a day and a month in English, such as 1 October";

    private SeasonWords() {}

    /** The season of a section, if it has one; empty also after a problem has been reported. */
    static Optional<Season> of(Section outer, Problems problems) {
        @Nullable Section section = outer.optionalSection("season");
        return section == null ? Optional.empty() : ofKeys(section, problems);
    }

    /** The season that a section itself gives; empty after a problem has been reported. */
    static Optional<Season> ofKeys(Section section, Problems problems) {
        @Nullable String from = section.text("from");
        @Nullable String to = section.text("to");
        section.done();
        return from == null || to == null
                ? Optional.empty()
                : of(
                        day(from, section.placeOf("from"), section.nameOf("from"), problems),
                        day(to, section.placeOf("to"), section.nameOf("to"), problems));
    }

    static Optional<Season> of(Optional<MonthDay> from, Optional<MonthDay> to) {
        return from.isPresent() && to.isPresent() ? Optional.of(new Season(from.get(), to.get())) : Optional.empty();
    }

    /** A day and a month; empty after a problem has been reported. */
    static Optional<MonthDay> day(String text, Place place, String subject, Problems problems) {
        Matcher matcher = DAY_AND_MONTH.matcher(text);
        Optional<MonthDay> day = matcher.matches()
                ? month(matcher.group(2)).flatMap(month -> day(month, Integer.parseInt(matcher.group(1))))
                : Optional.empty();
        if (day.isEmpty()) {
            problems.add(place, subject, Finding.of(ProblemKind.NOT_A_CHOICE, text, ALLOWED));
        }
        return day;
    }

    private static Optional<MonthDay> day(Month month, int day) {
        try {
            return Optional.of(MonthDay.of(month, day));
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    private static Optional<Month> month(String word) {
        return Arrays.stream(Month.values())
                .filter(month -> word.equalsIgnoreCase(month.getDisplayName(TextStyle.FULL, Locale.ENGLISH))
                        || word.equalsIgnoreCase(month.getDisplayName(TextStyle.SHORT, Locale.ENGLISH)))
                .findFirst();
    }
}

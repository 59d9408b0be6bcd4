package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.LimitSpecification.When;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads when a limit has to hold. */
final class LimitTimeReader {
    private static final Pattern WHEN = Pattern.compile("(within|after) (.*)");
    private static final String AFTER_TAKING = "ever, also after taking stops";
    private static final String WHEN_ALLOWED = "ever; " + AFTER_TAKING + "; within 5 yr; after 10 yr";

    private final Inputs inputs;
    private final @Nullable Period period;

    LimitTimeReader(Inputs inputs, @Nullable Period period) {
        this.inputs = inputs;
        this.period = period;
    }

    @Nullable
    When read(Section section, @Nullable LimitKind kind) {
        if (kind == LimitKind.DISTANCE) {
            if (section.has("when")) {
                section.refuse(
                        "when", Finding.of(ProblemKind.CONFLICTING_KEYS, "when", "a limit of distance without it"));
            }
            return When.EVER;
        }
        @Nullable String text = section.text("when");
        if (text == null || text.equals("ever")) {
            return text == null ? null : When.EVER;
        }
        if (text.equals(AFTER_TAKING)) {
            if (kind != null && !kind.goesOnAfterTaking()) {
                section.refuse(
                        "when",
                        Finding.of(ProblemKind.CONFLICTING_KEYS, text, "a limit of " + kind.words() + " without it"));
            }
            return new When(0, Double.POSITIVE_INFINITY, true);
        }
        Matcher matcher = WHEN.matcher(text);
        if (!matcher.matches()) {
            section.refuse("when", Finding.of(ProblemKind.NOT_A_CHOICE, text, WHEN_ALLOWED));
            return null;
        }
        double day = day(section, matcher.group(2));
        if (Double.isNaN(day)) {
            return null;
        }
        return matcher.group(1).equals("within") ? new When(0, day) : new When(day, Double.POSITIVE_INFINITY);
    }

    /** Reports a limit that ends before there is anything to judge. */
    void requireTimeForIt(Section section, LimitSpecification limit) {
        if (period == null) {
            return;
        }
        double firstDay = 0;
        String why = "";
        if (limit.comparedWith() instanceof LimitSpecification.OnDate on) {
            firstDay = period.day(on.date());
            why = "until then there is nothing to compare with";
        } else if (limit.comparedWith() instanceof LimitSpecification.MeanOfYears mean) {
            firstDay = period.day(mean.ends());
            why = "until then there is nothing to compare with";
        } else if (limit.quantity() instanceof LimitSpecification.DeclineRate rate) {
            firstDay = period.day(period.from().plusYears(rate.overYears()));
            why = "until then there is no rate over " + rate.overYears() + " yr";
        }
        double lastDay = Math.min(limit.when().toDay(), period.days());
        // on the day that it is compared with a value differs by nothing from itself
        boolean onlyItself = limit.comparedWith() instanceof LimitSpecification.OnDate && firstDay == lastDay;
        if (firstDay > lastDay || onlyItself) {
            section.refuse(
                    "when",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            "an end on " + period.date(lastDay),
                            (onlyItself
                                            ? "an end after " + period.date(firstDay)
                                            : "an end on " + period.date(firstDay) + " or later")
                                    + ": " + why));
        }
    }

    /** A time that the run does not reach would make any limit hold. */
    private static double dayWithin(Period period, Section section, Quantity time) {
        LocalDate date = period.after(time.value());
        if (date.isAfter(period.until())) {
            String found = time.text() + ", which is " + date;
            String allowed = "times up to the end of the period, " + period.until();
            section.refuse("when", Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
            return Double.NaN;
        }
        return period.day(date);
    }

    /** Day of the period some time after its start, NaN after a problem has been reported. */
    private double day(Section section, String time) {
        Place place = section.placeOf("when");
        String subject = section.nameOf("when");
        try {
            Quantity quantity = QuantityParser.parse(time, Dimension.TIME);
            if (!ValueRanges.TIME.contains(quantity.value())) {
                inputs.problems()
                        .add(
                                place,
                                subject,
                                Finding.of(ProblemKind.OUT_OF_RANGE, time, ValueRanges.TIME.describeFor(quantity)));
                return Double.NaN;
            }
            return period == null ? quantity.value() : dayWithin(period, section, quantity);
        } catch (QuantityException wrong) {
            inputs.problems().add(place, subject, wrong.finding());
            return Double.NaN;
        }
    }
}

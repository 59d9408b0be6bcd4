package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.headfall.scenarios.scenario.Limit;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads limits: what may not happen, where, by whose taking, when. */
final class LimitReader {
    /** The kinds of quantity a limit can hold for. */
    enum Kind {
        DRAWDOWN,
        FLOOR_LEVEL,
        DECLINE_RATE
    }

    static final Map<String, Kind> KINDS = new TreeMap<>(
            Map.of("drawdown", Kind.DRAWDOWN, "floor level", Kind.FLOOR_LEVEL, "decline rate", Kind.DECLINE_RATE));

    private static final String WITHOUT_THEM = "without them";
    private static final String THE_START = "the start";
    private static final Map<String, String> COMPARED_WITH =
            new TreeMap<>(Map.of(WITHOUT_THEM, WITHOUT_THEM, THE_START, THE_START));
    private static final String PROPOSED = "proposed bores";
    private static final String EVERYONE = "everyone";
    private static final Pattern WHEN = Pattern.compile("(within|after) (.*)");
    private static final String WHEN_ALLOWED = "ever, within 5 yr or after 10 yr";

    private final Inputs inputs;
    private final Set<String> places;
    private final KnownBores bores;
    private final @Nullable Period period;

    LimitReader(Inputs inputs, NameRegister names, KnownBores bores, @Nullable Period period) {
        this.inputs = inputs;
        this.places = names.names();
        this.bores = bores;
        this.period = period;
    }

    List<Limit> read(Section document) {
        List<Limit> limits = new ArrayList<>();
        NameRegister names = new NameRegister(inputs.problems());
        for (Section section : inputs.sections(document, "limits")) {
            @Nullable Limit limit = limit(section);
            if (limit != null) {
                names.add(limit.name(), section.placeOf("name"), section.nameOf("name"));
                limits.add(limit);
            }
        }
        return limits;
    }

    private @Nullable Limit limit(Section section) {
        @Nullable String name = section.text("name");
        @Nullable Kind kind = section.choice("quantity", KINDS);
        Limit.@Nullable Quantity quantity = kind == null ? null : quantity(section, kind);
        List<String> at = at(section);
        Limit.@Nullable Cause cause = cause(section, kind);
        Limit.@Nullable When when = when(section);
        @Nullable String text = section.optionalText("text");
        section.done();
        return name == null || quantity == null || at.isEmpty() || cause == null || when == null
                ? null
                : new Limit(name, quantity, at, cause, when, text == null ? "" : text, section.place());
    }

    private Limit.@Nullable Quantity quantity(Section section, Kind kind) {
        return switch (kind) {
            case DRAWDOWN -> {
                @Nullable Quantity most = section.quantity("at_most", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
                yield most == null ? null : new Limit.Drawdown(most.value());
            }
            case FLOOR_LEVEL -> {
                @Nullable Quantity least = section.quantity("at_least", Dimension.LEVEL, ValueRanges.LEVEL);
                yield least == null ? null : new Limit.FloorLevel(least.value());
            }
            case DECLINE_RATE -> {
                @Nullable Quantity most = section.quantity("at_most", Dimension.CHANGE_RATE, AllowedRange.NOT_NEGATIVE);
                yield most == null ? null : new Limit.DeclineRate(most.value());
            }
        };
    }

    private List<String> at(Section section) {
        List<String> at = new ArrayList<>();
        @Nullable DocumentNode node = section.node("at");
        if (node == null) {
            return at;
        }
        List<DocumentNode> nodes = node instanceof DocumentNode.Listing listing ? listing.entries() : List.of(node);
        for (DocumentNode one : nodes) {
            @Nullable String name = section.values().text(one, section.nameOf("at"));
            if (name != null && places.contains(name)) {
                at.add(name);
            } else if (name != null && bores.complete()) {
                section.values().refuse(one, section.nameOf("at"), unknownPlace(name));
            }
        }
        if (nodes.isEmpty()) {
            section.refuse("at", Finding.of(ProblemKind.EMPTY_VALUE, "an empty list", "at least one name"));
        }
        return at;
    }

    private Finding unknownPlace(String name) {
        String allowed = "the name of a bore, a spring or a protected point";
        return new Finding(ProblemKind.UNKNOWN_NAME, name, allowed, NearestSpelling.of(name, places));
    }

    private Limit.@Nullable Cause cause(Section section, @Nullable Kind kind) {
        @Nullable
        String comparedWith = section.has("compared_with") ? section.choice("compared_with", COMPARED_WITH) : null;
        if (kind == Kind.DRAWDOWN) {
            @Nullable String cause = section.text("cause");
            return cause == null ? null : causeNamed(section, cause, comparedWith);
        }
        for (String key : List.of("cause", "compared_with")) {
            if (kind != null && section.has(key)) {
                section.refuse(
                        key, Finding.of(ProblemKind.CONFLICTING_KEYS, key, key + " only with the quantity drawdown"));
            }
        }
        return new Limit.EverythingSinceStart();
    }

    /** A cumulative drawdown is measured from the start unless the document asks for a run without any bore. */
    private Limit.@Nullable Cause causeNamed(Section section, String cause, @Nullable String comparedWith) {
        if (cause.equals(EVERYONE)) {
            return WITHOUT_THEM.equals(comparedWith) ? new Limit.Everyone() : new Limit.EverythingSinceStart();
        }
        if (THE_START.equals(comparedWith)) {
            section.refuse(
                    "compared_with",
                    Finding.of(ProblemKind.CONFLICTING_KEYS, THE_START, WITHOUT_THEM + ", or the cause " + EVERYONE));
        }
        if (cause.equals(PROPOSED)) {
            return new Limit.ProposedBores();
        }
        if (bores.holders().contains(cause)) {
            return new Limit.Holder(cause);
        }
        if (bores.complete()) {
            List<String> allowed = new ArrayList<>(List.of(PROPOSED, EVERYONE));
            allowed.addAll(bores.holders());
            section.refuse("cause", ValueReader.notAChoice(cause, allowed));
        }
        return null;
    }

    private Limit.@Nullable When when(Section section) {
        @Nullable String text = section.text("when");
        if (text == null || text.equals("ever")) {
            return text == null ? null : Limit.When.EVER;
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
        return matcher.group(1).equals("within")
                ? new Limit.When(0, day)
                : new Limit.When(day, Double.POSITIVE_INFINITY);
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
                                Finding.of(ProblemKind.OUT_OF_RANGE, time, ValueRanges.TIME.describe("d")));
                return Double.NaN;
            }
            return period == null ? quantity.value() : dayWithin(period, section, quantity);
        } catch (QuantityException wrong) {
            inputs.problems().add(place, subject, wrong.finding());
            return Double.NaN;
        }
    }
}

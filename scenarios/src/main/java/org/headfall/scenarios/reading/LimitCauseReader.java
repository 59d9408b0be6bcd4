package org.headfall.scenarios.reading;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.BoreSelection;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.LimitSpecification.Reference;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads whose taking a limit counts, and what its effect is measured from. */
final class LimitCauseReader {
    static final String WITHOUT_THEM = "without them";
    private static final String THE_START = "the start";
    private static final String BEFORE_ANY_TAKING = "before any taking";
    private static final Pattern MEAN = Pattern.compile("mean of (\\d{4}) to (\\d{4})");
    private static final String EVERYONE = "everyone";

    private final KnownPlaces known;
    private final @Nullable Period period;

    LimitCauseReader(KnownPlaces known, @Nullable Period period) {
        this.known = known;
        this.period = period;
    }

    /** Both together. */
    record CauseAndReference(BoreSelection cause, Reference reference) {}

    @Nullable
    CauseAndReference read(Section section, @Nullable LimitKind kind, LimitSpecification.@Nullable Quantity quantity) {
        if (kind == null) {
            section.has("cause");
            section.has("compared_with");
            return null;
        }
        boolean valueItself =
                kind.effect() == LimitKind.Effect.NONE || quantity instanceof LimitSpecification.SpringDischarge;
        if (valueItself) {
            refuse(section, "cause", kind);
            refuse(section, "compared_with", kind);
            return new CauseAndReference(new BoreSelection.All(), new LimitSpecification.Nothing());
        }
        boolean needed = kind.effect() == LimitKind.Effect.NEEDED || kind.effect() == LimitKind.Effect.CAUSE_ALONE;
        @Nullable BoreSelection cause = needed || section.has("cause") ? cause(section) : new BoreSelection.All();
        if (kind.effect() == LimitKind.Effect.CAUSE_ALONE) {
            refuse(section, "compared_with", kind);
            return cause == null ? null : new CauseAndReference(cause, new LimitSpecification.Nothing());
        }
        @Nullable Reference reference = section.has("compared_with") ? reference(section) : usual(kind, cause);
        if (cause == null || reference == null) {
            return null;
        }
        requireEveryone(section, kind, cause, reference);
        return new CauseAndReference(cause, reference);
    }

    private static void refuse(Section section, String key, LimitKind kind) {
        if (section.has(key)) {
            section.refuse(
                    key,
                    Finding.of(ProblemKind.CONFLICTING_KEYS, key, "no " + key + " with this limit of " + kind.words()));
        }
    }

    /** A cumulative effect is measured from the start unless the document asks for a run without any bore. */
    private static @Nullable Reference usual(LimitKind kind, @Nullable BoreSelection cause) {
        if (cause == null) {
            return null;
        }
        if (!(cause instanceof BoreSelection.All)) {
            return new LimitSpecification.WithoutThem();
        }
        return kind == LimitKind.DECLINE_RATE ? new LimitSpecification.Nothing() : new LimitSpecification.TheStart();
    }

    /** The effect of some bores alone shows only beside the run without them. */
    private void requireEveryone(Section section, LimitKind kind, BoreSelection cause, Reference reference) {
        boolean alone = reference instanceof LimitSpecification.WithoutThem;
        boolean rateOfAll = kind == LimitKind.DECLINE_RATE && section.has("compared_with") && !alone;
        if ((!(cause instanceof BoreSelection.All) && !alone) || rateOfAll) {
            String everyone = rateOfAll ? "" : ", or the cause " + EVERYONE;
            section.refuse(
                    "compared_with",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            String.valueOf(section.optionalText("compared_with")),
                            WITHOUT_THEM + everyone));
        }
    }

    private @Nullable BoreSelection cause(Section section) {
        @Nullable String cause = section.text("cause");
        if (cause == null) {
            return null;
        }
        boolean holder = known.bores().holders().contains(cause);
        boolean userClass = known.bores().classes().contains(cause);
        if (holder && userClass) {
            section.refuse(
                    "cause",
                    Finding.of(
                            ProblemKind.DUPLICATE_NAME,
                            cause + ", a holder and a class of users",
                            "other names for one of them"));
        }
        BoreSelection bores = switch (cause) {
            case EVERYONE -> new BoreSelection.All();
            case "proposed bores" -> new BoreSelection.Proposed();
            case "existing bores" -> new BoreSelection.Existing();
            default -> holder ? new BoreSelection.OfHolder(cause) : new BoreSelection.OfClass(cause);
        };
        if (bores instanceof BoreSelection.OfClass && !userClass) {
            if (known.bores().complete()) {
                List<String> allowed = new ArrayList<>(List.of("proposed bores", "existing bores", EVERYONE));
                allowed.addAll(known.bores().holders());
                allowed.addAll(known.bores().classes());
                section.refuse("cause", ValueReader.notAChoice(cause, allowed));
            }
            return null;
        }
        requireBores(section, bores);
        return bores;
    }

    /** The effect of bores that are not there is nothing, so that any limit on it would hold. */
    private void requireBores(Section section, BoreSelection cause) {
        boolean missing =
                (cause instanceof BoreSelection.Proposed && !known.bores().hasProposal() && !known.seeksBores())
                        || (cause instanceof BoreSelection.Existing
                                && !known.bores().hasExisting());
        if (missing) {
            String group = cause instanceof BoreSelection.Proposed ? "proposed" : "existing";
            section.refuse(
                    "cause",
                    Finding.of(
                            ProblemKind.NOT_A_CHOICE,
                            cause.words() + ", but no bore is " + group,
                            "a cause that there is, or a bore of the group " + group));
        }
    }

    private @Nullable Reference reference(Section section) {
        @Nullable String text = section.text("compared_with");
        if (text == null) {
            return null;
        }
        Matcher mean = MEAN.matcher(text);
        if (mean.matches()) {
            return mean(section, Integer.parseInt(mean.group(1)), Integer.parseInt(mean.group(2)));
        }
        @Nullable LocalDate date = ValueReader.parseDate(text);
        if (date != null) {
            return isWithin(section, date) ? new LimitSpecification.OnDate(date) : null;
        }
        if (known.cases().contains(text)) {
            return new LimitSpecification.OtherCase(text);
        }
        return switch (text) {
            case WITHOUT_THEM -> new LimitSpecification.WithoutThem();
            case THE_START -> new LimitSpecification.TheStart();
            case BEFORE_ANY_TAKING -> new LimitSpecification.BeforeAnyTaking();
            default -> {
                section.refuse("compared_with", unknown(text));
                yield null;
            }
        };
    }

    private Finding unknown(String text) {
        List<String> words = new ArrayList<>(List.of(WITHOUT_THEM, THE_START, BEFORE_ANY_TAKING));
        words.addAll(known.cases());
        String allowed = String.join(", ", words) + ", a date such as 2030-07-01, mean of 2030 to 2034"
                + (known.cases().isEmpty() ? ", or the name of another case if the document has cases" : "");
        return new Finding(ProblemKind.NOT_A_CHOICE, text, allowed, NearestSpelling.of(text, words));
    }

    private @Nullable Reference mean(Section section, int first, int last) {
        if (last < first) {
            section.refuse(
                    "compared_with",
                    Finding.of(ProblemKind.DATE_ORDER, first + " to " + last, "the earlier year first"));
            return null;
        }
        try {
            LimitSpecification.MeanOfYears mean = new LimitSpecification.MeanOfYears(first, last);
            return isWithin(section, mean.begins()) && isWithin(section, mean.ends()) ? mean : null;
        } catch (DateTimeException impossible) {
            section.refuse(
                    "compared_with",
                    Finding.of(ProblemKind.NOT_A_DATE, first + " to " + last, "two years such as 2030 to 2034"));
            return null;
        }
    }

    private boolean isWithin(Section section, LocalDate date) {
        if (period == null || (!date.isBefore(period.from()) && !date.isAfter(period.until()))) {
            return true;
        }
        section.refuse(
                "compared_with",
                Finding.of(
                        ProblemKind.OUT_OF_RANGE,
                        date.toString(),
                        "dates from " + period.from() + " to " + period.until()));
        return false;
    }
}

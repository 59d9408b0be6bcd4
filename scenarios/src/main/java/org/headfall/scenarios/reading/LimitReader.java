package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.LimitSpecification.At;
import org.headfall.scenarios.scenario.LimitSpecification.When;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads limits: what may not happen, where, by whose taking, measured from what, when, and how surely. */
final class LimitReader {
    private static final AllowedRange PROBABILITY = new AllowedRange(0, false, 1, false);

    private final Inputs inputs;
    private final LimitPlaceReader places;
    private final LimitCauseReader causes;
    private final LimitTimeReader times;

    private final boolean hasWaterYear;

    /** A reader; limits of volume need to know when water years begin. */
    LimitReader(Inputs inputs, KnownPlaces known, MapArea area, @Nullable Period period, boolean hasWaterYear) {
        this.inputs = inputs;
        this.hasWaterYear = hasWaterYear;
        places = new LimitPlaceReader(inputs, known, area);
        causes = new LimitCauseReader(known, period);
        times = new LimitTimeReader(inputs, period);
    }

    List<LimitSpecification> read(Section document) {
        List<LimitSpecification> limits = new ArrayList<>();
        NameRegister names = new NameRegister(inputs.problems());
        for (Section section : inputs.sections(document, "limits")) {
            @Nullable String name = section.text("name");
            if (name != null) {
                names.add(name, section.placeOf("name"), section.nameOf("name"));
            }
            @Nullable LimitSpecification limit = limit(section, name);
            if (limit != null) {
                limits.add(limit);
            }
        }
        return limits;
    }

    private @Nullable LimitSpecification limit(Section section, @Nullable String name) {
        @Nullable LimitKind kind = section.choice("quantity", LimitKind.BY_WORDS);
        if (kind == LimitKind.VOLUME && !hasWaterYear) {
            section.refuse(
                    "quantity",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "volume without accounts",
                            "volume with accounts and their water_year"));
        }
        LimitSpecification.@Nullable Quantity quantity = kind == null ? null : new LimitBoundReader(section).read(kind);
        if (kind == null) {
            LimitBoundReader.KEYS.forEach(section::has); // known keys of some quantity, of which nothing can be said
        }
        List<At> at = places.read(section, kind);
        LimitCauseReader.@Nullable CauseAndReference effect = causes.read(section, kind, quantity);
        @Nullable When when = times.read(section, kind);
        @Nullable Quantity sure = section.optionalQuantity("how_sure", Dimension.NUMBER, PROBABILITY);
        @Nullable String text = section.optionalText("text");
        section.done();
        if (name == null || kind == null || quantity == null || at.isEmpty() || effect == null || when == null) {
            return null;
        }
        LimitSpecification limit = new LimitSpecification(
                name,
                quantity,
                at,
                effect.cause(),
                effect.reference(),
                when,
                sure == null ? OptionalDouble.empty() : OptionalDouble.of(sure.value()),
                text == null ? "" : text,
                section.place());
        times.requireTimeForIt(section, limit);
        if (quantity instanceof LimitSpecification.ShareOfAvailableHead share
                && share.above() instanceof LimitSpecification.OwnLevel level) {
            places.requireLevel(section, level, at);
        }
        if (at.stream().anyMatch(LimitPlaceReader::isOnTheMap)) {
            requireWhatMapsShow(section, limit);
        }
        return limit;
    }

    /** Heads of cells are kept on some days of the run only. */
    private static void requireWhatMapsShow(Section section, LimitSpecification limit) {
        if (limit.when().afterTakingStops()) {
            section.refuse("when", onlyAtStations("also after taking stops"));
        }
        if (limit.comparedWith() instanceof LimitSpecification.MeanOfYears) {
            section.refuse("compared_with", onlyAtStations("a mean of years"));
        }
        if (limit.quantity() instanceof LimitSpecification.ShareOfAvailableHead share
                && share.above() != LimitSpecification.OwnLevel.AQUIFER_TOP
                && !(share.above() instanceof LimitSpecification.GivenLevel)) {
            section.refuse("above", onlyAtStations("a level that cells do not have"));
        }
    }

    private static Finding onlyAtStations(String what) {
        return Finding.of(
                ProblemKind.CONFLICTING_KEYS,
                what + " on a part of the map",
                what + " at bores, springs and protected points");
    }
}

package org.headfall.scenarios.reading;

import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.scenarios.scenario.SitingSpecification.Distances;
import org.headfall.scenarios.scenario.SitingSpecification.Lifting;
import org.jspecify.annotations.Nullable;

/** Reads where new bores are looked for. */
final class SitingReader {
    private static final AllowedRange RATE = AllowedRange.positiveUpTo(1e7);
    private static final AllowedRange DEPTH = AllowedRange.positiveUpTo(20_000);
    private static final AllowedRange SHARE = AllowedRange.positiveUpTo(1);
    private static final AllowedRange SITES = AllowedRange.between(1, SitingSpecification.MOST_SITES);

    private final Inputs inputs;
    private final MapArea area;
    private final @Nullable Period period;
    private final KnownBores known;

    SitingReader(Inputs inputs, MapArea area, @Nullable Period period, KnownBores known) {
        this.inputs = inputs;
        this.area = area;
        this.period = period;
        this.known = known;
    }

    Optional<SitingSpecification> read(Section document) {
        @Nullable Section section = document.optionalSection("siting");
        return section == null ? Optional.empty() : Optional.ofNullable(siting(section));
    }

    private @Nullable SitingSpecification siting(Section section) {
        @Nullable Quantity rate = section.optionalQuantity("rate", Dimension.RATE, RATE);
        int sites = sites(section);
        double days = PlanningTimes.days(section, period);
        @Nullable String holder = section.optionalText("holder");
        if (holder != null && !known.holders().contains(holder) && known.complete()) {
            section.refuse("holder", known.unknownHolder(holder, ", or leave holder out for somebody without bores"));
        }
        @Nullable Quantity radius = section.quantity("screen_radius", Dimension.LENGTH, ValueRanges.SCREEN_RADIUS);
        WellLossSpecification loss = new CompletionReader().wellLoss(section);
        @Nullable Quantity largest = section.quantity("largest_rate", Dimension.RATE, RATE);
        @Nullable Lifting lifting = lifting(section);
        OptionalDouble deepest = optional(section, "deepest_bore");
        Distances distances = new DistanceReader(inputs).read(section);
        @Nullable
        Area excluded = section.has("excluded")
                ? new FeatureFileReader(inputs, area).area(inputs.spatialFile(section, "excluded"))
                : null;
        section.done();
        if (rate != null && largest != null && rate.value() > largest.value()) {
            section.refuse(
                    "rate",
                    Finding.of(ProblemKind.OUT_OF_RANGE, rate.text(), "at most largest_rate, " + largest.text()));
        }
        return radius == null || largest == null || lifting == null
                ? null
                : new SitingSpecification(
                        rate == null ? OptionalDouble.empty() : OptionalDouble.of(rate.value()),
                        sites,
                        days,
                        holder == null ? "" : holder,
                        radius.value(),
                        loss,
                        largest.value(),
                        lifting,
                        deepest,
                        distances,
                        Optional.ofNullable(excluded));
    }

    private static int sites(Section section) {
        @Nullable Quantity sites = section.optionalQuantity("sites", Dimension.NUMBER, SITES);
        if (sites != null && sites.value() != Math.rint(sites.value())) {
            section.refuse("sites", Finding.of(ProblemKind.OUT_OF_RANGE, sites.text(), "a whole number"));
        }
        return sites == null ? 1 : (int) sites.value();
    }

    private static @Nullable Lifting lifting(Section section) {
        OptionalDouble deepest = optional(section, "deepest_pumping_level");
        @Nullable
        Quantity above = section.optionalQuantity("above_aquifer_top", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
        @Nullable
        Quantity delivery = section.optionalQuantity("delivery_head", Dimension.LENGTH, AllowedRange.between(0, 5000));
        OptionalDouble lift = optional(section, "largest_lift");
        @Nullable Quantity efficiency = section.quantity("efficiency", Dimension.NUMBER, SHARE);
        return efficiency == null
                ? null
                : new Lifting(
                        deepest,
                        above == null ? 0 : above.value(),
                        delivery == null ? 0 : delivery.value(),
                        lift,
                        efficiency.value());
    }

    private static OptionalDouble optional(Section section, String key) {
        @Nullable Quantity value = section.optionalQuantity(key, Dimension.LENGTH, DEPTH);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.value());
    }
}

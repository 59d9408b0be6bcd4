package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.scenario.SpacingSpecification.Prices;
import org.headfall.scenarios.spatial.Position;
import org.jspecify.annotations.Nullable;

/** Reads which layouts of a bore field are compared. */
final class SpacingReader {
    static final Map<String, Layout> LAYOUTS = new TreeMap<>(
            Map.of("line", Layout.LINE, "grid", Layout.GRID, "hexagon", Layout.HEXAGON, "ring", Layout.RING));

    private static final AllowedRange COUNT = AllowedRange.between(1, 200);
    private static final AllowedRange STEPS = AllowedRange.between(2, 200);
    private static final AllowedRange PRICE = AllowedRange.NOT_NEGATIVE;
    private static final AllowedRange SHARE = AllowedRange.positiveUpTo(1);
    private static final AllowedRange DISTANCE = AllowedRange.between(1, 1e6);

    private final PositionReader positions;
    private final @Nullable Period period;

    SpacingReader(PositionReader positions, @Nullable Period period) {
        this.positions = positions;
        this.period = period;
    }

    Optional<SpacingSpecification> read(Section document) {
        @Nullable Section section = document.optionalSection("spacing");
        return section == null ? Optional.empty() : Optional.ofNullable(spacing(section));
    }

    private @Nullable SpacingSpecification spacing(Section section) {
        @Nullable Position at = positions.required(section, "at");
        List<Layout> layouts = new ArrayList<>();
        for (DocumentNode node : section.optionalList("layouts")) {
            @Nullable Layout layout = section.values().choice(node, section.nameOf("layouts"), LAYOUTS);
            if (layout != null) {
                layouts.add(layout);
            }
        }
        List<Integer> counts = counts(section);
        @Nullable Quantity rate = section.quantity("rate", Dimension.RATE, AllowedRange.positiveUpTo(1e7));
        @Nullable Quantity lift = section.quantity("lift", Dimension.LENGTH, AllowedRange.positiveUpTo(5000));
        double days = PlanningTimes.days(section, period);
        @Nullable Quantity radius = section.quantity("screen_radius", Dimension.LENGTH, ValueRanges.SCREEN_RADIUS);
        WellLossSpecification loss = new CompletionReader().wellLoss(section);
        @Nullable
        Quantity delivery = section.optionalQuantity("delivery_head", Dimension.LENGTH, AllowedRange.between(0, 5000));
        @Nullable Quantity efficiency = section.quantity("efficiency", Dimension.NUMBER, SHARE);
        @Nullable Range range = range(section);
        @Nullable Prices prices = prices(section);
        section.done();
        return at == null
                        || rate == null
                        || lift == null
                        || radius == null
                        || efficiency == null
                        || range == null
                        || prices == null
                ? null
                : new SpacingSpecification(
                        at,
                        layouts.isEmpty() ? List.of(Layout.values()) : layouts,
                        counts,
                        range.from(),
                        range.to(),
                        range.steps(),
                        rate.value(),
                        lift.value(),
                        days,
                        radius.value(),
                        loss,
                        delivery == null ? 0 : delivery.value(),
                        efficiency.value(),
                        prices);
    }

    private static List<Integer> counts(Section section) {
        List<Integer> counts = new ArrayList<>();
        @Nullable DocumentNode all = section.node("bores");
        for (DocumentNode node : all == null ? List.<DocumentNode>of() : section.optionalList("bores")) {
            @Nullable
            Quantity count = section.values().quantity(node, section.nameOf("bores"), Dimension.NUMBER, COUNT);
            if (count != null && count.value() != Math.rint(count.value())) {
                section.values()
                        .refuse(
                                node,
                                section.nameOf("bores"),
                                Finding.of(ProblemKind.OUT_OF_RANGE, count.text(), "whole numbers"));
            } else if (count != null) {
                counts.add((int) count.value());
            }
        }
        if (all instanceof DocumentNode.Listing listing && listing.entries().isEmpty()) {
            section.refuse("bores", Finding.of(ProblemKind.EMPTY_VALUE, "an empty list", "at least one number"));
        }
        return counts;
    }

    private record Range(double from, double to, int steps) {}

    private static @Nullable Range range(Section outer) {
        @Nullable Section section = outer.section("spacings");
        if (section == null) {
            return null;
        }
        @Nullable Quantity from = section.quantity("from", Dimension.LENGTH, DISTANCE);
        @Nullable Quantity to = section.quantity("to", Dimension.LENGTH, DISTANCE);
        @Nullable Quantity steps = section.quantity("steps", Dimension.NUMBER, STEPS);
        section.done();
        if (from != null && to != null && from.value() >= to.value()) {
            section.refuse("to", Finding.of(ProblemKind.OUT_OF_RANGE, to.text(), "more than from, " + from.text()));
            return null;
        }
        return from == null || to == null || steps == null
                ? null
                : new Range(from.value(), to.value(), (int) Math.rint(steps.value()));
    }

    private static @Nullable Prices prices(Section outer) {
        @Nullable Section section = outer.section("prices");
        if (section == null) {
            return null;
        }
        @Nullable Quantity energy = section.quantity("energy_per_kwh", Dimension.NUMBER, PRICE);
        @Nullable Quantity pipe = section.quantity("pipe_per_metre", Dimension.NUMBER, PRICE);
        @Nullable Quantity bore = section.quantity("bore", Dimension.NUMBER, PRICE);
        @Nullable Quantity life = section.quantity("paid_over", Dimension.TIME, ValueRanges.TIME);
        @Nullable Quantity interest = section.quantity("interest", Dimension.NUMBER, AllowedRange.between(0, 1));
        section.done();
        return energy == null || pipe == null || bore == null || life == null || interest == null
                ? null
                : new Prices(
                        energy.value(),
                        pipe.value(),
                        bore.value(),
                        life.value() / Period.DAYS_PER_YEAR,
                        interest.value());
    }
}

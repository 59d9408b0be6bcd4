package org.headfall.scenarios.reading;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.LimitSpecification.Base;
import org.headfall.scenarios.scenario.LimitSpecification.OwnLevel;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads what is limited, with its bound and the keys that only this quantity has. */
final class LimitBoundReader {
    private static final String AT_MOST = "at_most";
    private static final String AT_LEAST = "at_least";

    /** Keys that some quantity has. */
    static final List<String> KEYS = List.of(AT_MOST, AT_LEAST, "gauge_level", "over", "above");

    static final Map<String, OwnLevel> OWN_LEVELS = new TreeMap<>(Map.of(
            "aquifer top", OwnLevel.AQUIFER_TOP, "pump intake", OwnLevel.PUMP_INTAKE, "outlet", OwnLevel.OUTLET));

    private static final AllowedRange SHARE = new AllowedRange(0, true, 1, true);
    private static final AllowedRange YEARS = AllowedRange.between(Period.DAYS_PER_YEAR, 100 * Period.DAYS_PER_YEAR);

    private final Section section;

    LimitBoundReader(Section section) {
        this.section = section;
    }

    LimitSpecification.@Nullable Quantity read(LimitKind kind) {
        return switch (kind) {
            case DRAWDOWN -> most(Dimension.LENGTH, ValueRanges.DRAWDOWN, LimitSpecification.Drawdown::new);
            case FLOOR_LEVEL -> least(Dimension.LEVEL, ValueRanges.LEVEL, LimitSpecification.FloorLevel::new);
            case PRESSURE -> {
                OptionalDouble gauge = value("gauge_level", Dimension.LEVEL, ValueRanges.LEVEL);
                yield least(
                        Dimension.PRESSURE,
                        ValueRanges.GAUGE_PRESSURE,
                        bound -> new LimitSpecification.Pressure(bound, gauge));
            }
            case DECLINE_RATE -> {
                int years = years();
                yield most(
                        Dimension.CHANGE_RATE,
                        ValueRanges.DECLINE,
                        bound -> new LimitSpecification.DeclineRate(bound, years));
            }
            case SHARE_OF_AVAILABLE_HEAD -> {
                @Nullable Base above = above();
                yield least(
                        Dimension.NUMBER,
                        SHARE,
                        bound -> new LimitSpecification.ShareOfAvailableHead(
                                bound, above == null ? OwnLevel.AQUIFER_TOP : above));
            }
            case FLOW -> least(Dimension.RATE, ValueRanges.ENTITLEMENT, LimitSpecification.Flow::new);
            case SPRING_DISCHARGE ->
                isShare()
                        ? least(Dimension.NUMBER, SHARE, LimitSpecification.ShareOfSpringDischarge::new)
                        : least(Dimension.RATE, ValueRanges.ENTITLEMENT, LimitSpecification.SpringDischarge::new);
            case VOLUME -> most(Dimension.VOLUME, ValueRanges.VOLUME, LimitSpecification.Volume::new);
            case DISTANCE -> least(Dimension.LENGTH, ValueRanges.DISTANCE, LimitSpecification.Distance::new);
        };
    }

    private LimitSpecification.@Nullable Quantity most(
            Dimension dimension, AllowedRange range, DoubleFunction<LimitSpecification.Quantity> quantity) {
        return bound(AT_MOST, AT_LEAST, dimension, range, quantity);
    }

    private LimitSpecification.@Nullable Quantity least(
            Dimension dimension, AllowedRange range, DoubleFunction<LimitSpecification.Quantity> quantity) {
        return bound(AT_LEAST, AT_MOST, dimension, range, quantity);
    }

    private LimitSpecification.@Nullable Quantity bound(
            String key,
            String opposite,
            Dimension dimension,
            AllowedRange range,
            DoubleFunction<LimitSpecification.Quantity> quantity) {
        if (section.has(opposite)) {
            section.refuse(opposite, Finding.of(ProblemKind.CONFLICTING_KEYS, opposite + " with this quantity", key));
            section.has(key);
            return null;
        }
        var bound = section.quantity(key, dimension, range);
        return bound == null ? null : quantity.apply(bound.value());
    }

    private OptionalDouble value(String key, Dimension dimension, AllowedRange range) {
        var value = section.optionalQuantity(key, dimension, range);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.value());
    }

    private boolean isShare() {
        return section.optionalNode(AT_LEAST) instanceof DocumentNode.Scalar scalar
                && scalar.text().strip().endsWith("%");
    }

    /** Whole years, for seasons must not pass for a decline. */
    private int years() {
        OptionalDouble over = value("over", Dimension.TIME, YEARS);
        double years = over.orElse(Period.DAYS_PER_YEAR) / Period.DAYS_PER_YEAR;
        if (years != Math.rint(years)) {
            String found = section.optionalText("over");
            section.refuse("over", Finding.of(ProblemKind.OUT_OF_RANGE, String.valueOf(found), "whole years: 5 yr"));
        }
        return (int) Math.rint(years);
    }

    private @Nullable Base above() {
        if (!(section.optionalNode("above") instanceof DocumentNode.Scalar scalar)) {
            return section.optionalChoice("above", OWN_LEVELS);
        }
        if (scalar.text().matches("\\s*[-+.\\d].*")) {
            OptionalDouble level = value("above", Dimension.LEVEL, ValueRanges.LEVEL);
            return level.isPresent() ? new LimitSpecification.GivenLevel(level.getAsDouble()) : null;
        }
        return section.choice("above", OWN_LEVELS);
    }
}

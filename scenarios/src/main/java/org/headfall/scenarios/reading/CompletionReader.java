package org.headfall.scenarios.reading;

import java.util.Optional;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.BoreCompletion;
import org.headfall.scenarios.scenario.BoreCompletion.PipeSpecification;
import org.headfall.scenarios.scenario.BoreCompletion.Screen;
import org.headfall.scenarios.scenario.BoreCompletion.WaterTemperature;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.solver.bore.Pipe;
import org.jspecify.annotations.Nullable;

/** Reads how a bore of the document is built and what that costs: well loss, skin, screen, casing, hot water. */
final class CompletionReader {
    private static final double JACOB = 2;

    WellLossSpecification wellLoss(Section bore) {
        @Nullable Section section = bore.optionalSection("well_loss");
        if (section == null) {
            return new WellLossSpecification(0, 0, JACOB);
        }
        @Nullable
        Quantity linear = section.optionalQuantity("linear", Dimension.LINEAR_WELL_LOSS, AllowedRange.NOT_NEGATIVE);
        @Nullable
        Quantity quadratic =
                section.optionalQuantity("quadratic", Dimension.QUADRATIC_WELL_LOSS, AllowedRange.NOT_NEGATIVE);
        @Nullable Section power = section.optionalSection("turbulent");
        double b = linear == null ? 0 : linear.value();
        WellLossSpecification loss = power == null
                ? new WellLossSpecification(b, quadratic == null ? 0 : quadratic.value(), JACOB)
                : turbulent(power, b);
        if (section.has("quadratic") && section.has("turbulent")) {
            section.refuse(
                    "turbulent",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "quadratic and turbulent",
                            "one of the keys quadratic, turbulent"));
        }
        if (!section.has("linear") && !section.has("quadratic") && !section.has("turbulent")) {
            bore.refuse(
                    "well_loss",
                    Finding.of(ProblemKind.MISSING_KEY, "none of them", "linear, and either quadratic or turbulent"));
        }
        section.done();
        return loss;
    }

    /** The loss at one rate says what C is, whose unit would depend on the exponent. */
    private static WellLossSpecification turbulent(Section section, double linear) {
        @Nullable Quantity loss = section.quantity("loss", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
        @Nullable Quantity rate = section.quantity("at_rate", Dimension.RATE, AllowedRange.POSITIVE);
        @Nullable Quantity exponent = section.quantity("exponent", Dimension.NUMBER, ValueRanges.WELL_LOSS_EXPONENT);
        section.done();
        return loss == null || rate == null || exponent == null
                ? new WellLossSpecification(linear, 0, JACOB)
                : turbulent(linear, loss.value(), rate.value(), exponent.value());
    }

    /** Well loss BQ + CQ^p of which the second part is known at one rate. */
    static WellLossSpecification turbulent(double linear, double loss, double rate, double exponent) {
        return new WellLossSpecification(linear, loss / Math.pow(rate, exponent), exponent);
    }

    BoreCompletion completion(Section bore) {
        @Nullable Quantity skin = bore.optionalQuantity("skin", Dimension.NUMBER, ValueRanges.SKIN);
        @Nullable Section screen = bore.optionalSection("screen");
        @Nullable PipeSpecification casing = pipe(bore, "casing");
        @Nullable WaterTemperature temperature = bore.has("water_temperature") ? temperature(bore) : null;
        if (bore.has("water_temperature") && !bore.has("screen")) {
            bore.refuse(
                    "water_temperature",
                    Finding.of(
                            ProblemKind.MISSING_KEY,
                            "water_temperature without screen",
                            "screen, on which the column of hot water stands"));
        }
        return new BoreCompletion(
                skin == null ? 0 : skin.value(),
                screen == null ? Optional.empty() : screen(screen),
                Optional.ofNullable(casing),
                Optional.ofNullable(temperature));
    }

    private static Optional<Screen> screen(Section section) {
        @Nullable Quantity top = section.quantity("top", Dimension.LEVEL, ValueRanges.LEVEL);
        @Nullable Quantity bottom = section.quantity("bottom", Dimension.LEVEL, ValueRanges.LEVEL);
        @Nullable
        Quantity ratio = section.optionalQuantity("vertical_over_horizontal", Dimension.NUMBER, ValueRanges.RATIO);
        section.done();
        return top == null || bottom == null
                ? Optional.empty()
                : Optional.of(new Screen(
                        top.value(), bottom.value(), Optional.ofNullable(ratio).map(Quantity::value)));
    }

    /** A casing or riser, if the key is there; null also after a problem has been reported. */
    static @Nullable PipeSpecification pipe(Section outer, String key) {
        @Nullable Section section = outer.optionalSection(key);
        if (section == null) {
            return null;
        }
        @Nullable Quantity diameter = section.quantity("diameter", Dimension.LENGTH, ValueRanges.PIPE_DIAMETER);
        @Nullable Quantity length = section.quantity("length", Dimension.LENGTH, ValueRanges.PIPE_LENGTH);
        @Nullable Quantity roughness = section.quantity("roughness", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
        section.done();
        if (diameter == null || length == null || roughness == null) {
            return null;
        }
        double roughest = Pipe.LARGEST_RELATIVE_ROUGHNESS * diameter.value();
        if (roughness.value() > roughest) {
            section.refuse(
                    "roughness",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            roughness.text(),
                            AllowedRange.between(0, roughest).describeFor(roughness)
                                    + ", a twentieth of the diameter"));
            return null;
        }
        return new PipeSpecification(diameter.value(), length.value(), roughness.value());
    }

    /** One temperature, or one at either end of the column. */
    private static @Nullable WaterTemperature temperature(Section bore) {
        if (!(bore.node("water_temperature") instanceof DocumentNode.Mapping)) {
            @Nullable Quantity one = temperature(bore, "water_temperature");
            return one == null ? null : new WaterTemperature(one.value(), one.value());
        }
        @Nullable Section section = bore.section("water_temperature");
        if (section == null) {
            return null;
        }
        @Nullable Quantity wellhead = temperature(section, "wellhead");
        @Nullable Quantity screen = temperature(section, "screen");
        section.done();
        return wellhead == null || screen == null ? null : new WaterTemperature(wellhead.value(), screen.value());
    }

    private static @Nullable Quantity temperature(Section section, String key) {
        return section.quantity(key, Dimension.TEMPERATURE, ValueRanges.TEMPERATURE);
    }
}

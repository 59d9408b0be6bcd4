package org.headfall.scenarios.reading;

import java.util.Optional;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.AquiferSpecification;
import org.headfall.scenarios.scenario.AquiferSpecification.Transmissivity;
import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SealingBedSpecification;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/** Reads the aquifer and the sealing bed above it. */
final class AquiferReader {
    private final FieldReader fields;

    AquiferReader(Inputs inputs, MapArea area) {
        this.fields = new FieldReader(inputs, area);
    }

    /**
     * The aquifer.
     *
     * @param section the section; its key {@code within} has been read already
     * @param within the area that came of it; null if there is none or a problem has been reported
     */
    @Nullable
    AquiferSpecification aquifer(Section section, @Nullable Area within) {
        @Nullable Transmissivity transmissivity = transmissivity(section);
        @Nullable
        Field storativity = fields.required(section, "storativity", Dimension.NUMBER, ValueRanges.STORATIVITY);
        @Nullable Field top = fields.required(section, "top", Dimension.LEVEL, ValueRanges.LEVEL);
        @Nullable Field bottom = fields.required(section, "bottom", Dimension.LEVEL, ValueRanges.LEVEL);
        section.done();
        if (top instanceof Field.Constant high && bottom instanceof Field.Constant low && low.value() >= high.value()) {
            section.refuse(
                    "bottom",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            PlainNumber.of(low.value()) + " m",
                            "less than the top, " + PlainNumber.of(high.value()) + " m"));
        }
        return transmissivity == null || storativity == null || top == null || bottom == null
                ? null
                : new AquiferSpecification(
                        transmissivity,
                        storativity,
                        top,
                        bottom,
                        Optional.ofNullable(within),
                        section.place(),
                        section.placeOf("bottom"));
    }

    private @Nullable Transmissivity transmissivity(Section aquifer) {
        boolean hasRatio = aquifer.has("x_over_y");
        @Nullable Quantity ratio = aquifer.optionalQuantity("x_over_y", Dimension.NUMBER, ValueRanges.RATIO);
        if (aquifer.optionalNode("transmissivity") instanceof DocumentNode.Mapping mapping && hasAxes(mapping)) {
            if (hasRatio) {
                aquifer.refuse(
                        "x_over_y",
                        Finding.of(ProblemKind.CONFLICTING_KEYS, "x and y as well", "the ratio or both directions"));
            }
            return alongAxes(aquifer);
        }
        @Nullable
        Field mean = fields.required(aquifer, "transmissivity", Dimension.TRANSMISSIVITY, ValueRanges.TRANSMISSIVITY);
        return mean == null || (hasRatio && ratio == null)
                ? null
                : new AquiferSpecification.WithRatio(mean, ratio == null ? 1 : ratio.value());
    }

    private static boolean hasAxes(DocumentNode.Mapping mapping) {
        return mapping.entries().stream()
                .anyMatch(entry -> entry.key().equals("x") || entry.key().equals("y"));
    }

    private @Nullable Transmissivity alongAxes(Section aquifer) {
        @Nullable Section section = aquifer.section("transmissivity");
        if (section == null) {
            return null;
        }
        @Nullable Field x = fields.required(section, "x", Dimension.TRANSMISSIVITY, ValueRanges.TRANSMISSIVITY);
        @Nullable Field y = fields.required(section, "y", Dimension.TRANSMISSIVITY, ValueRanges.TRANSMISSIVITY);
        section.done();
        return x == null || y == null ? null : new AquiferSpecification.AlongAxes(x, y);
    }

    /** The bed, or null if there is none or a problem has been reported. */
    @Nullable
    SealingBedSpecification sealingBed(Section document) {
        @Nullable Section section = document.optionalSection("sealing_bed");
        if (section == null) {
            return null;
        }
        @Nullable Field thickness = fields.required(section, "thickness", Dimension.LENGTH, ValueRanges.THICKNESS);
        @Nullable
        Field conductivity =
                fields.required(section, "vertical_conductivity", Dimension.CONDUCTIVITY, ValueRanges.CONDUCTIVITY);
        @Nullable
        Field storage =
                fields.required(section, "specific_storage", Dimension.SPECIFIC_STORAGE, ValueRanges.SPECIFIC_STORAGE);
        @Nullable Field head = fields.required(section, "head_above", Dimension.LEVEL, ValueRanges.LEVEL);
        section.done();
        return thickness == null || conductivity == null || storage == null || head == null
                ? null
                : new SealingBedSpecification(thickness, conductivity, storage, head);
    }

    /** Level of the ground. */
    @Nullable
    Field ground(Section document) {
        return fields.required(document, "ground", Dimension.LEVEL, ValueRanges.LEVEL);
    }

    /** Given heads. */
    @Nullable
    Field heads(Section start) {
        AllowedRange range = ValueRanges.LEVEL;
        return fields.required(start, "heads", Dimension.LEVEL, range);
    }
}

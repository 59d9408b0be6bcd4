package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.SitingSpecification.DistanceClass;
import org.headfall.scenarios.scenario.SitingSpecification.Distances;
import org.jspecify.annotations.Nullable;

/** Reads distances that new bores must keep: one for all, or a list of classes by how much a bore takes. */
final class DistanceReader {
    private final Inputs inputs;

    DistanceReader(Inputs inputs) {
        this.inputs = inputs;
    }

    Distances read(Section siting) {
        @Nullable Section section = siting.optionalSection("distances");
        if (section == null) {
            return new Distances(List.of(), List.of(), 0);
        }
        List<DistanceClass> bores = classes(section, "bores");
        List<DistanceClass> springs = classes(section, "springs");
        @Nullable Quantity sides = section.optionalQuantity("sides", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
        section.done();
        return new Distances(bores, springs, sides == null ? 0 : sides.value());
    }

    private List<DistanceClass> classes(Section section, String key) {
        if (!(section.optionalNode(key) instanceof DocumentNode.Listing)) {
            @Nullable Quantity one = section.optionalQuantity(key, Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
            return one == null ? List.of() : List.of(new DistanceClass(Double.POSITIVE_INFINITY, one.value()));
        }
        List<DistanceClass> classes = new ArrayList<>();
        double before = 0;
        for (Section one : inputs.sections(section, key)) {
            @Nullable Quantity upTo = one.optionalQuantity("up_to", Dimension.RATE, AllowedRange.POSITIVE);
            @Nullable Quantity least = one.quantity("at_least", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE);
            one.done();
            double most = upTo == null ? Double.POSITIVE_INFINITY : upTo.value();
            if (most <= before || Double.isInfinite(before)) {
                one.refuse(
                        "up_to",
                        Finding.of(
                                ProblemKind.OUT_OF_RANGE,
                                upTo == null ? "none" : upTo.text(),
                                "each class up to more than the one before, only the last without up_to"));
            }
            before = most;
            if (least != null) {
                classes.add(new DistanceClass(most, least.value()));
            }
        }
        return classes;
    }
}

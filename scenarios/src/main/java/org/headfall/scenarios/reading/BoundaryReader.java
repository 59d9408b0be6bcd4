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
import org.headfall.scenarios.reading.TimeCourseReader.Shape;
import org.headfall.scenarios.scenario.BoundaryCondition;
import org.headfall.scenarios.scenario.BoundarySpecification;
import org.headfall.scenarios.scenario.BoundarySpecification.Stretch;
import org.headfall.scenarios.scenario.TimeCourse;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.solver.aquifer.Side;
import org.jspecify.annotations.Nullable;

/** Reads the pieces of the rim through which water passes. */
final class BoundaryReader {
    static final Map<String, Side> SIDES =
            new TreeMap<>(Map.of("west", Side.WEST, "east", Side.EAST, "south", Side.SOUTH, "north", Side.NORTH));

    private final Inputs inputs;
    private final TimeCourseReader courses;
    private final @Nullable Extent extent;

    BoundaryReader(Inputs inputs, @Nullable Extent extent) {
        this.inputs = inputs;
        this.courses = new TimeCourseReader(inputs);
        this.extent = extent;
    }

    List<BoundarySpecification> read(Section document) {
        List<BoundarySpecification> boundaries = new ArrayList<>();
        NameRegister names = new NameRegister(inputs.problems());
        for (Section section : inputs.sections(document, "boundaries")) {
            @Nullable BoundarySpecification boundary = boundary(section);
            if (boundary != null) {
                names.add(boundary.name(), section.placeOf("name"), section.nameOf("name"));
                checkOverlap(section, boundary, boundaries);
                boundaries.add(boundary);
            }
        }
        return boundaries;
    }

    /** Whether a boundary of the document gives a head, or may be meant to: it is written as it should not be. */
    static boolean giveHeads(Section document) {
        return document.optionalNode("boundaries") instanceof DocumentNode.Listing boundaries
                && boundaries.entries().stream()
                        .anyMatch(boundary -> boundary instanceof DocumentNode.Mapping mapping
                                && (has(mapping, "fixed_head")
                                        || has(mapping, "far_head")
                                        || !has(mapping, "given_flow")));
    }

    private static boolean has(DocumentNode.Mapping mapping, String key) {
        return mapping.entries().stream().anyMatch(entry -> entry.key().equals(key));
    }

    private @Nullable BoundarySpecification boundary(Section section) {
        @Nullable String name = section.text("name");
        @Nullable Side side = section.choice("side", SIDES);
        boolean partial = section.has("from") || section.has("to");
        @Nullable Stretch part = partial ? stretch(section, side) : null;
        @Nullable
        String kind = inputs.onlyOneOf(section, section.nameOf("fixed_head"), "fixed_head", "far_head", "given_flow");
        @Nullable BoundaryCondition condition = kind == null ? null : condition(section, kind);
        section.done();
        return name == null || side == null || condition == null || (partial && part == null)
                ? null
                : new BoundarySpecification(name, side, Optional.ofNullable(part), condition, section.place());
    }

    private @Nullable BoundaryCondition condition(Section section, String kind) {
        boolean flow = kind.equals("given_flow");
        Dimension dimension = flow ? Dimension.RATE : Dimension.LEVEL;
        AllowedRange range = flow ? ValueRanges.RATE : ValueRanges.LEVEL;
        @Nullable
        TimeCourse course = courses.required(
                section, kind, dimension, range, flow ? Shape.STEPS : Shape.LINES, flow ? "flow" : "head");
        @Nullable
        Quantity distance =
                kind.equals("far_head") ? section.quantity("distance", Dimension.LENGTH, AllowedRange.POSITIVE) : null;
        if (course == null) {
            return null;
        }
        if (flow) {
            return new BoundaryCondition.GivenFlow(course);
        }
        if (kind.equals("fixed_head")) {
            return new BoundaryCondition.FixedHead(course);
        }
        return distance == null ? null : new BoundaryCondition.FarHead(course, distance.value());
    }

    private @Nullable Stretch stretch(Section section, @Nullable Side side) {
        double low = side == null || extent == null ? 0 : start(side, extent);
        double high = side == null || extent == null ? 0 : end(side, extent);
        AllowedRange range = high > low ? AllowedRange.between(low, high) : ValueRanges.POSITION;
        @Nullable Quantity from = section.quantity("from", Dimension.LENGTH, range);
        @Nullable Quantity to = section.quantity("to", Dimension.LENGTH, range);
        if (from == null || to == null) {
            return null;
        }
        if (from.value() >= to.value()) {
            section.refuse("to", Finding.of(ProblemKind.OUT_OF_RANGE, to.text(), "more than " + from.text()));
            return null;
        }
        return new Stretch(from.value(), to.value());
    }

    private static double start(Side side, Extent extent) {
        return side.countedByRow() ? extent.south() : extent.west();
    }

    private static double end(Side side, Extent extent) {
        return side.countedByRow() ? extent.north() : extent.east();
    }

    private static void checkOverlap(Section section, BoundarySpecification next, List<BoundarySpecification> earlier) {
        for (BoundarySpecification other : earlier) {
            if (other.side() == next.side() && overlap(other, next)) {
                section.refuse(
                        "side",
                        Finding.of(
                                ProblemKind.CONFLICTING_KEYS,
                                "a stretch that " + other.name() + " takes up too",
                                "one boundary on each stretch of the rim; give from and to"));
            }
        }
    }

    private static boolean overlap(BoundarySpecification one, BoundarySpecification other) {
        if (one.part().isEmpty() || other.part().isEmpty()) {
            return true;
        }
        Stretch a = one.part().get();
        Stretch b = other.part().get();
        return a.from() < b.to() && b.from() < a.to();
    }
}

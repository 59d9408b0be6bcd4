package org.headfall.scenarios.reading;

import java.util.List;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/** Reads positions, {@code [31 km, 22 km]}, and checks that they lie in the grid. */
final class PositionReader {
    private final Problems problems;
    private final @Nullable Extent extent;

    /** A reader; without an extent, because the grid itself is at fault, positions are not checked. */
    PositionReader(Problems problems, @Nullable Extent extent) {
        this.problems = problems;
        this.extent = extent;
    }

    @Nullable
    Position required(Section section, String key) {
        @Nullable DocumentNode node = section.node(key);
        if (node == null) {
            return null;
        }
        if (!(node instanceof DocumentNode.Listing listing) || listing.entries().size() != 2) {
            section.refuse(
                    key,
                    Finding.of(ProblemKind.WRONG_TYPE, shown(node), "easting and northing, such as [31 km, 22 km]"));
            return null;
        }
        List<DocumentNode> both = listing.entries();
        ValueReader values = section.values();
        @Nullable
        Quantity x = values.quantity(both.get(0), section.nameOf(key), Dimension.LENGTH, ValueRanges.POSITION);
        @Nullable
        Quantity y = values.quantity(both.get(1), section.nameOf(key), Dimension.LENGTH, ValueRanges.POSITION);
        if (x == null || y == null) {
            return null;
        }
        Position position = new Position(x.value(), y.value());
        check(position, section.placeOf(key), section.nameOf(key));
        return position;
    }

    /** Reports a position beyond the grid. */
    void check(Position position, Place place, String subject) {
        if (extent != null && !extent.contains(position.x(), position.y())) {
            String found = PlainNumber.of(position.x()) + " m east, " + PlainNumber.of(position.y()) + " m north"
                    + hint(position);
            problems.add(place, subject, Finding.of(ProblemKind.OUTSIDE_GRID, found, extent + " (m)"));
        }
    }

    private static String shown(DocumentNode node) {
        return node instanceof DocumentNode.Listing listing
                ? "a list of " + listing.entries().size()
                : node.shown();
    }

    private String hint(Position position) {
        boolean swapped = extent != null && extent.contains(position.y(), position.x());
        return swapped ? "; easting and northing seem to be swapped" : "";
    }
}

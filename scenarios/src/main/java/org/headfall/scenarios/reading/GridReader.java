package org.headfall.scenarios.reading;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.GridSpecification;
import org.headfall.scenarios.spatial.Extent;
import org.jspecify.annotations.Nullable;

/** Reads the grid: extent, greatest length of a cell, refinement. */
final class GridReader {
    static final Map<String, GridSpecification.Around> AROUND = around();

    /** Slower growth makes more cells than any grid may have. */
    private static final AllowedRange GROWTH = AllowedRange.between(1.01, 3);
    /** The radius of a thin bore (m); a cell inside a bore means nothing. */
    private static final double SMALLEST_CELL = 0.01;

    private static final Set<String> REFINE_KEYS = Set.of("around", "down_to", "growth");

    private @Nullable Extent extent;

    private static Map<String, GridSpecification.Around> around() {
        Map<String, GridSpecification.Around> around = new LinkedHashMap<>();
        around.put("bores", GridSpecification.Around.BORES);
        around.put("bores and springs", GridSpecification.Around.BORES_AND_SPRINGS);
        return around;
    }

    /** The extent that was read, even if something else of the grid is at fault; null if it is at fault itself. */
    @Nullable
    Extent extent() {
        return extent;
    }

    @Nullable
    GridSpecification read(Section document) {
        @Nullable Section section = document.section("grid");
        if (section == null) {
            return null;
        }
        extent = extent(section);
        @Nullable Quantity cell = section.quantity("cell", Dimension.LENGTH, AllowedRange.POSITIVE);
        boolean refined = section.has("refine");
        if (!refined) {
            section.knowsWithin("refine", REFINE_KEYS);
        }
        GridSpecification.@Nullable Refinement refinement = refined ? refinement(section, cell) : null;
        section.done();
        if (extent == null || cell == null || (refined && refinement == null)) {
            return null;
        }
        checkSize(section, extent, cell);
        return new GridSpecification(extent, cell.value(), Optional.ofNullable(refinement), section.place());
    }

    private static @Nullable Extent extent(Section grid) {
        @Nullable Section section = grid.section("extent");
        if (section == null) {
            return null;
        }
        @Nullable Quantity west = section.quantity("west", Dimension.LENGTH, ValueRanges.POSITION);
        @Nullable Quantity east = section.quantity("east", Dimension.LENGTH, ValueRanges.POSITION);
        @Nullable Quantity south = section.quantity("south", Dimension.LENGTH, ValueRanges.POSITION);
        @Nullable Quantity north = section.quantity("north", Dimension.LENGTH, ValueRanges.POSITION);
        section.done();
        boolean across = follows(section, west, "east", east);
        boolean up = follows(section, south, "north", north);
        return west == null || east == null || south == null || north == null || !across || !up
                ? null
                : new Extent(west.value(), south.value(), east.value(), north.value());
    }

    private static boolean follows(Section section, @Nullable Quantity low, String key, @Nullable Quantity high) {
        if (low == null || high == null || low.value() < high.value()) {
            return true;
        }
        section.refuse(key, Finding.of(ProblemKind.OUT_OF_RANGE, high.text(), "more than " + low.text()));
        return false;
    }

    private static GridSpecification.@Nullable Refinement refinement(Section grid, @Nullable Quantity cell) {
        @Nullable Section section = grid.section("refine");
        if (section == null) {
            return null;
        }
        GridSpecification.@Nullable Around around = section.choice("around", AROUND);
        double largest = cell == null ? Double.POSITIVE_INFINITY : Math.max(cell.value(), SMALLEST_CELL);
        AllowedRange lengths = AllowedRange.between(SMALLEST_CELL, largest);
        @Nullable Quantity downTo = section.quantity("down_to", Dimension.LENGTH, lengths);
        boolean hasGrowth = section.has("growth");
        @Nullable Quantity growth = section.optionalQuantity("growth", Dimension.NUMBER, GROWTH);
        section.done();
        if (around == null || downTo == null || (hasGrowth && growth == null)) {
            return null;
        }
        double ratio = growth == null ? GridSpecification.Refinement.USUAL_GROWTH : growth.value();
        return new GridSpecification.Refinement(around, downTo.value(), ratio);
    }

    private static void checkSize(Section section, Extent extent, Quantity cell) {
        double cells = Math.ceil(extent.width() / cell.value()) * Math.ceil(extent.height() / cell.value());
        if (cells > GridSpecification.MOST_CELLS) {
            String found = String.format(Locale.ROOT, "%s, which makes %.0f million cells", cell.text(), cells / 1e6);
            String allowed = "at most " + GridSpecification.MOST_CELLS / 1_000_000
                    + " million cells: larger cells or a smaller extent";
            section.refuse("cell", Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
        }
    }
}

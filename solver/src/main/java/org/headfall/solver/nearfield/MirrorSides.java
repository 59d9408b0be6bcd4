package org.headfall.solver.nearfield;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Straight sides of the aquifer near a place, at which its drawdown is mirrored: where the grid or the aquifer ends with no
 * water passing, or with a head held. A side counts as straight if it goes on for {@link #STRAIGHT_CELLS} on both sides of the
 * place, or up to a corner. A side of fixed head is a mirror for places in its first two cells only: beyond,
 * the grid does within 2 % without.
 */
final class MirrorSides {
    private static final int STRAIGHT_CELLS = 2;

    /** A far head is felt as a closed side where its distance is this many times that of the place, at least. */
    private static final double FAR = 4;

    /**
     * A side.
     *
     * @param position easting or northing of its line (m)
     * @param distance stretched distance from the place (m)
     * @param held whether head is held there, so that drawdown changes its sign
     */
    record Mirror(double position, double distance, boolean held) {}

    private enum Condition {
        CLOSED,
        HELD,
        NEITHER
    }

    private final Aquifer aquifer;
    private final RectilinearGrid grid;
    private final List<OuterBoundary> boundaries;
    private final Map<Side, Mirror> mirrors = new EnumMap<>(Side.class);
    private final Map<Side, Double> unmirrored = new EnumMap<>(Side.class);

    /**
     * Finds the sides.
     *
     * @param aquifer the aquifer
     * @param boundaries what passes through the rim
     * @param cell cell of the place
     * @param drawdown drawdown around the place, for stretched distances
     * @param within stretched distance within which sides count (m)
     */
    MirrorSides(
            Aquifer aquifer, List<OuterBoundary> boundaries, int cell, LogarithmicDrawdown drawdown, double within) {
        this.aquifer = aquifer;
        this.grid = aquifer.grid();
        this.boundaries = boundaries;
        for (Side side : Side.values()) {
            find(side, cell, drawdown, within);
        }
    }

    private void find(Side side, int cell, LogarithmicDrawdown drawdown, double within) {
        int last = cell;
        double distance = stretched(side, last, drawdown);
        while (distance < within && isInside(side, last)) {
            last = beyond(side, last);
            distance = stretched(side, last, drawdown);
        }
        if (distance >= within) {
            return;
        }
        double position = line(side, last);
        Condition condition = condition(side, last, distance);
        if (condition == Condition.HELD && last != cell && beyond(side, cell) != last) {
            return;
        }
        if (condition == Condition.NEITHER || !isStraight(side, last, condition, distance)) {
            unmirrored.put(side, distance);
        } else {
            mirrors.put(side, new Mirror(position, distance, condition == Condition.HELD));
        }
    }

    private boolean isStraight(Side side, int cell, Condition condition, double distance) {
        int step = side.countedByRow() ? grid.columns() : 1;
        for (int direction = -1; direction <= 1; direction += 2) {
            for (int k = 1; k <= STRAIGHT_CELLS && exists(side, cell, k * direction); k++) {
                int other = cell + k * direction * step;
                if (!aquifer.active()[other]) {
                    break;
                }
                if (isInside(side, other) || condition(side, other, distance) != condition) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean exists(Side side, int cell, int along) {
        int place = (side.countedByRow() ? grid.row(cell) : grid.column(cell)) + along;
        return place >= 0 && place < (side.countedByRow() ? grid.rows() : grid.columns());
    }

    /** Whether the aquifer goes on toward a side. */
    private boolean isInside(Side side, int cell) {
        return !isRim(side, cell) && aquifer.active()[beyond(side, cell)];
    }

    private boolean isRim(Side side, int cell) {
        return switch (side) {
            case WEST -> grid.column(cell) == 0;
            case EAST -> grid.column(cell) + 1 == grid.columns();
            case SOUTH -> grid.row(cell) == 0;
            case NORTH -> grid.row(cell) + 1 == grid.rows();
        };
    }

    private int beyond(Side side, int cell) {
        return switch (side) {
            case WEST -> cell - 1;
            case EAST -> cell + 1;
            case SOUTH -> cell - grid.columns();
            case NORTH -> cell + grid.columns();
        };
    }

    private double line(Side side, int cell) {
        Axis axis = side.countedByRow() ? grid.x() : grid.y();
        int index = side.countedByRow() ? grid.column(cell) : grid.row(cell);
        return axis.edge(side == Side.EAST || side == Side.NORTH ? index + 1 : index);
    }

    private double stretched(Side side, int cell, LogarithmicDrawdown drawdown) {
        double position = line(side, cell);
        return Math.abs(side.countedByRow() ? drawdown.stretchedX(position) : drawdown.stretchedY(position));
    }

    private Condition condition(Side side, int cell, double distance) {
        if (!isRim(side, cell)) {
            return Condition.CLOSED;
        }
        for (OuterBoundary boundary : boundaries) {
            if (covers(boundary.segment(), side, cell)) {
                if (boundary instanceof OuterBoundary.FixedHead) {
                    return Condition.HELD;
                }
                if (boundary instanceof OuterBoundary.FarHead far && far.distance() < FAR * distance) {
                    return Condition.NEITHER;
                }
            }
        }
        return Condition.CLOSED;
    }

    private boolean covers(SideSegment segment, Side side, int cell) {
        int along = side.countedByRow() ? grid.row(cell) : grid.column(cell);
        return segment.side() == side && along >= segment.first() && along <= segment.last();
    }

    private MirrorSides(MirrorSides all) {
        aquifer = all.aquifer;
        grid = all.grid;
        boundaries = all.boundaries;
        unmirrored.putAll(all.unmirrored);
        all.mirrors.forEach((side, mirror) -> {
            if (mirror.held()) {
                unmirrored.put(side, mirror.distance());
            } else {
                mirrors.put(side, mirror);
            }
        });
    }

    /** The same sides, those of fixed head left out. */
    MirrorSides closedOnly() {
        return new MirrorSides(this);
    }

    boolean anyHeld() {
        return mirrors.values().stream().anyMatch(Mirror::held);
    }

    /** Mirrors by side. */
    Map<Side, Mirror> mirrors() {
        return mirrors;
    }

    /**
     * Sides within the distance that are no mirrors, with their stretched distance (m): not straight, with a far head close by,
     * or of fixed head and too near.
     */
    Map<Side, Double> unmirrored() {
        return unmirrored;
    }

    /** Whether the outer face of a cell on a side lies on a mirror at which head is held. */
    boolean holds(Side side, int cell) {
        Mirror mirror = mirrors.get(side);
        return mirror != null && mirror.held() && isRim(side, cell) && condition(side, cell, 0) == Condition.HELD;
    }
}

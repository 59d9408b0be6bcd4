package org.headfall.solver.nearfield;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;

/**
 * A bore as the grid of its aquifer sees it, wherever it stands in its cell: weights of the cells around it that serve
 * both as its source and as the head there that the grid carries. Immutable.
 *
 * <p>With p the logarithmic drawdown of a unit discharge on the cells ({@link CellDrawdown}), the flow of p between two neighbouring cells by
 * the difference of their values is wrong near the place, while the true flow through their face is the angle that the
 * face subtends. Each face is put right: {@code weights = 1 in the place's cell + divergence of (flow by differences -
 * true flow)}. The weights add up to 1, so that no water is lost, and for constant T the head of the cells is then
 * exactly a smooth part less Q p. The transpose, the same weights applied to heads, gives a smooth head at the place: for
 * any field that the grid carries it is the discrete form of Green's formula.
 *
 * <p>Beside a straight side p is the sum of the logarithms of the place and of its images ({@link MirroredDrawdown}).
 * Faces to cells outside the aquifer or the grid are not corrected, nor is what lies beyond the {@link Reach}. Where T
 * varies, the correction of a face grows with its T over that of the place's cell, within a factor of two: beyond a
 * stronger contrast drawdown is no logarithm any more, and a stronger correction was found to do harm.
 */
public final class NearField implements SeenPlace {

    private static final double STRONGEST_CONTRAST = 2;
    private static final double KEPT_OFF_EDGES = 1e-6;

    /** Share of the reach within which sides are mirrors: four cells, where the grid carries the images well. */
    private static final double MIRRORED_WITHIN = 0.5;

    private final int cell;
    private final double radius;
    private final LogarithmicDrawdown drawdown;
    private final MirrorSides sides;
    private final MirroredDrawdown mirrored;
    private final CellDrawdown onCells;
    private final Reach reach;
    private final CellWeights weights;
    private final CellWeights belowCentres;

    private NearField(
            Aquifer aquifer, int cell, LogarithmicDrawdown drawdown, double radius, Reach reach, MirrorSides sides) {
        this.cell = cell;
        this.drawdown = drawdown;
        this.radius = radius;
        this.reach = reach;
        this.sides = sides;
        mirrored = new MirroredDrawdown(drawdown, sides);
        onCells = new CellDrawdown(aquifer, cell, mirrored, sides);
        CellWindow window = reach.window(aquifer.grid(), cell, drawdown);
        weights = new FaceCorrections(aquifer, cell, mirrored, onCells.in(window), reach, window, STRONGEST_CONTRAST)
                .weights();
        belowCentres = belowCentres(aquifer, window);
    }

    /**
     * Where T is larger than at the place, the same flow takes less head; where it is smaller, less flow comes. So of five
     * rules this one erred least against cells a seventh as wide, with T of a deviation of ln T of 0.5 and 1.
     */
    private CellWeights belowCentres(Aquifer aquifer, CellWindow window) {
        RectilinearGrid grid = window.grid();
        int[] cells = IntStream.range(0, sides.anyHeld() ? window.size() : 0)
                .map(place -> window.cell(place % window.columns(), place / window.columns()))
                .filter(one -> aquifer.active()[one] && onCells.isAtFixedHead(one))
                .toArray();
        double[] below = new double[cells.length];
        for (int k = 0; k < cells.length; k++) {
            int one = cells[k];
            double there = Math.sqrt(aquifer.transmissivityX()[one] * aquifer.transmissivityY()[one]);
            double share = reach.share(distanceTo(grid.centreX(one), grid.centreY(one)))
                    * Math.min(1, drawdown.transmissivity() / there);
            below[k] = share * (onCells.in(one) - onCells.atCentre(one));
        }
        return new CellWeights(cells, below);
    }

    /**
     * Near field of a place.
     *
     * @param aquifer the aquifer
     * @param boundaries pieces of the rim through which water passes
     * @param x easting (m)
     * @param y northing (m)
     * @param radius radius of the bore at the screen face (m)
     * @return the near field
     * @throws IllegalArgumentException if the place lies outside the grid or in a cell that is not part of the aquifer
     */
    public static NearField at(Aquifer aquifer, List<OuterBoundary> boundaries, double x, double y, double radius) {
        int cell = cellAt(aquifer, x, y);
        LogarithmicDrawdown drawdown = drawdown(aquifer, cell, x, y);
        Reach reach = Reach.of(aquifer.grid(), cell, drawdown);
        MirrorSides sides = sides(aquifer, boundaries, cell, drawdown, reach);
        NearField field = new NearField(aquifer, cell, drawdown, radius, reach, sides);
        // So near a side of fixed head that the grid carries more than all of the drawdown.
        boolean tooNear = sides.anyHeld() && !(field.unresolvedAtWall() > 0);
        return tooNear ? new NearField(aquifer, cell, drawdown, radius, reach, sides.closedOnly()) : field;
    }

    /**
     * Sides of the aquifer near a place at which drawdown should be mirrored but is not, as {@link #unmirroredSides()} of its
     * near field, which is made only where that decides.
     *
     * @param aquifer the aquifer
     * @param boundaries pieces of the rim through which water passes
     * @param x easting (m)
     * @param y northing (m)
     * @param radius radius of the bore at the screen face (m)
     * @return the sides with the distance of each (m)
     * @throws IllegalArgumentException if the place lies outside the grid or in a cell that is not part of the aquifer
     */
    public static Map<Side, Double> unmirroredSides(
            Aquifer aquifer, List<OuterBoundary> boundaries, double x, double y, double radius) {
        int cell = cellAt(aquifer, x, y);
        LogarithmicDrawdown drawdown = drawdown(aquifer, cell, x, y);
        MirrorSides sides = sides(aquifer, boundaries, cell, drawdown, Reach.of(aquifer.grid(), cell, drawdown));
        return sides.anyHeld() ? at(aquifer, boundaries, x, y, radius).unmirroredSides() : sides.unmirrored();
    }

    private static LogarithmicDrawdown drawdown(Aquifer aquifer, int cell, double x, double y) {
        RectilinearGrid grid = aquifer.grid();
        return new LogarithmicDrawdown(
                offEdges(grid.x(), grid.column(cell), x),
                offEdges(grid.y(), grid.row(cell), y),
                aquifer.transmissivityX()[cell],
                aquifer.transmissivityY()[cell]);
    }

    private static MirrorSides sides(
            Aquifer aquifer, List<OuterBoundary> boundaries, int cell, LogarithmicDrawdown drawdown, Reach reach) {
        return new MirrorSides(aquifer, boundaries, cell, drawdown, MIRRORED_WITHIN * reach.radius());
    }

    /** Cell of a place, which must be part of the aquifer. */
    static int cellAt(Aquifer aquifer, double x, double y) {
        int cell = aquifer.grid().locate(x, y);
        if (cell < 0 || !aquifer.active()[cell]) {
            throw new IllegalArgumentException("(" + PlainNumber.of(x) + ", " + PlainNumber.of(y) + ") m lies "
                    + (cell < 0 ? "outside the grid" : "in cell " + cell + ", which is not part of the aquifer"));
        }
        return cell;
    }

    /** On an edge the angle of the edge is not defined: the place is moved into its cell by a hair. */
    private static double offEdges(Axis axis, int index, double position) {
        double hair = KEPT_OFF_EDGES * axis.width(index);
        return Math.max(axis.edge(index) + hair, Math.min(axis.edge(index + 1) - hair, position));
    }

    @Override
    public int cell() {
        return cell;
    }

    @Override
    public CellWeights weights() {
        return weights;
    }

    /**
     * How far a unit discharge here lowers head in cells along sides of fixed head below that at their centres (d/m²), as
     * the grid carries it; see {@link CentreHeads}.
     */
    CellWeights belowCentres() {
        return belowCentres;
    }

    /**
     * Radius below which a bore here must stay (m): at its wall head would not stand lower than what the grid carries.
     */
    public double largestRadius() {
        return drawdown.distanceOf(carried(weights) - byImagesAtWall()) / drawdown.stretchedRadius(1);
    }

    /**
     * Drawdown at the wall of the bore here by its own unit discharge, as far as the grid does not carry it.
     *
     * @return drawdown per discharge (d/m²), positive if the radius is below {@link #largestRadius}
     */
    public double unresolvedAtWall() {
        return drawdown.at(drawdown.stretchedRadius(radius)) + byImagesAtWall() - carried(weights);
    }

    private double byImagesAtWall() {
        return mirrored.byImages(easting(), northing(), drawdown.stretchedRadius(radius));
    }

    /** Sides of the aquifer nearby at which drawdown should be mirrored but is not, with the distance of each (m). */
    public Map<Side, Double> unmirroredSides() {
        return sides.unmirrored();
    }

    @Override
    public double unresolvedFrom(NearField other) {
        double nearest = other.drawdown.stretchedRadius(Math.max(radius, other.radius));
        double distance = Math.max(other.distanceTo(this), nearest);
        if (distance > other.reach.radius() && distanceTo(other) > reach.radius()) {
            return 0;
        }
        return other.drawdown.at(distance)
                + other.mirrored.byImages(easting(), northing(), nearest)
                - other.carried(weights);
    }

    /**
     * Drawdown at a point by a unit discharge here, as far as the grid does not carry it.
     *
     * @param x easting of the point (m)
     * @param y northing (m)
     * @param seen weights by which heads of cells give the head there
     * @return drawdown per discharge (d/m²); zero out of reach
     */
    double unresolvedAt(double x, double y, CellWeights seen) {
        double nearest = drawdown.stretchedRadius(radius);
        double distance = Math.max(distanceTo(x, y), nearest);
        if (distance > reach.radius()) {
            return 0;
        }
        return drawdown.at(distance) + mirrored.byImages(x, y, nearest) - carried(seen);
    }

    double easting() {
        return drawdown.easting();
    }

    double northing() {
        return drawdown.northing();
    }

    private double distanceTo(NearField other) {
        return distanceTo(other.easting(), other.northing());
    }

    private double distanceTo(double x, double y) {
        return Math.hypot(drawdown.stretchedX(x), drawdown.stretchedY(y));
    }

    /** What weights make of the drawdown of this place on the cells (d/m²). */
    private double carried(CellWeights seen) {
        double sum = 0;
        for (int k = 0; k < seen.cells().length; k++) {
            sum += seen.weights()[k] * onCells.in(seen.cells()[k]);
        }
        return sum;
    }
}

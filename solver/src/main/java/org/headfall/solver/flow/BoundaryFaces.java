package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.Optional;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.Schedule;

/**
 * The outer faces of one boundary in discrete form: inflow through face {@code k} is
 * {@code conductance[k] (level - head of cell[k])}, or {@code share[k]} of a given flow.
 */
final class BoundaryFaces {

    private final String name;
    private final Schedule schedule;
    private final boolean givenFlow;
    private final int[] cells;
    private final double[] factors;

    private BoundaryFaces(String name, Schedule schedule, boolean givenFlow, int[] cells, double[] factors) {
        this.name = name;
        this.schedule = schedule;
        this.givenFlow = givenFlow;
        this.cells = cells;
        this.factors = factors;
    }

    static BoundaryFaces of(OuterBoundary boundary, Aquifer aquifer) {
        if (boundary instanceof OuterBoundary.FixedHead fixed) {
            return tied(fixed, fixed.head(), 0, aquifer);
        }
        if (boundary instanceof OuterBoundary.FarHead far) {
            return tied(far, far.head(), far.distance(), aquifer);
        }
        OuterBoundary.GivenFlow given = (OuterBoundary.GivenFlow) boundary;
        int[] cells = activeCells(given, aquifer);
        double[] shares = new double[cells.length];
        double length = 0;
        for (int k = 0; k < cells.length; k++) {
            shares[k] = faceLength(given.segment(), aquifer.grid(), cells[k]);
            length += shares[k];
        }
        for (int k = 0; k < cells.length; k++) {
            shares[k] /= length;
        }
        return new BoundaryFaces(given.name(), given.inflow(), true, cells, shares);
    }

    /** Faces tied to a level at a distance beyond the face: {@code C = T L / (half cell + distance)}. */
    private static BoundaryFaces tied(OuterBoundary boundary, Schedule level, double beyond, Aquifer aquifer) {
        SideSegment segment = boundary.segment();
        int[] cells = activeCells(boundary, aquifer);
        double[] across = segment.side().countedByRow() ? aquifer.transmissivityX() : aquifer.transmissivityY();
        double distance = segment.centreToFace(aquifer.grid()) + beyond;
        double[] conductances = new double[cells.length];
        for (int k = 0; k < cells.length; k++) {
            conductances[k] = across[cells[k]] * faceLength(segment, aquifer.grid(), cells[k]) / distance;
        }
        return new BoundaryFaces(boundary.name(), level, false, cells, conductances);
    }

    private static int[] activeCells(OuterBoundary boundary, Aquifer aquifer) {
        SideSegment segment = boundary.segment();
        int along = segment.side().countedByRow()
                ? aquifer.grid().rows()
                : aquifer.grid().columns();
        if (segment.last() >= along) {
            throw new IllegalArgumentException("boundary '" + boundary.name() + "': cell " + segment.last()
                    + " lies beyond the " + along + " cells of the side");
        }
        int[] cells = new int[segment.length()];
        int found = 0;
        for (int place = 0; place < cells.length; place++) {
            int cell = segment.cell(aquifer.grid(), place);
            if (aquifer.active()[cell]) {
                cells[found++] = cell;
            }
        }
        if (found == 0) {
            throw new IllegalArgumentException(
                    "boundary '" + boundary.name() + "' touches no cell that belongs to the aquifer");
        }
        return Arrays.copyOf(cells, found);
    }

    private static double faceLength(SideSegment segment, RectilinearGrid grid, int cell) {
        return segment.side().countedByRow()
                ? grid.y().width(grid.row(cell))
                : grid.x().width(grid.column(cell));
    }

    String name() {
        return name;
    }

    /** Whether the flow is given rather than a head. */
    boolean givesFlow() {
        return givenFlow;
    }

    /** What it follows: a head (m above datum), or an inflow (m³/d). */
    Schedule schedule() {
        return schedule;
    }

    /** Conductance of each cell to the head of the boundary (m²/d); of a given flow, the share of each cell. */
    CellWeights weights() {
        return new CellWeights(cells, factors);
    }

    /** Adds the conductances to the diagonal (m²/d). */
    void addTies(double[] diagonal) {
        if (!givenFlow) {
            for (int k = 0; k < cells.length; k++) {
                diagonal[cells[k]] += factors[k];
            }
        }
    }

    /** Adds what does not depend on head to the right-hand side (m³/d). */
    void addSources(double day, double[] sources) {
        double value = schedule.at(day);
        for (int k = 0; k < cells.length; k++) {
            sources[cells[k]] += factors[k] * value;
        }
    }

    /** What it lets in beyond that of day 0, if its head or flow changes. */
    Optional<ChangingSource> change() {
        return ChangingSources.following(name, cells, factors, schedule);
    }

    /** Adds the flow through the boundary (m³/d) to a term, inflow and outflow of single faces kept apart. */
    void addFlow(double day, double[] head, FlowRates rates, int term) {
        double value = schedule.at(day);
        for (int k = 0; k < cells.length; k++) {
            rates.add(term, factors[k] * (givenFlow ? value : value - head[cells[k]]));
        }
    }
}

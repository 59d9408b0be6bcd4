package org.headfall.scenarios.doubts;

import java.util.List;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.flow.FlowProblem;

/**
 * A problem on a grid of half the resolution: cells twice as wide both ways. Transmissivity of a wider cell is the
 * geometric mean of its parts, as it is where a map is put on cells; storage, leakage and recharge keep their sums.
 * Bores and springs stay where they are.
 *
 * <p>The difference of head on both grids tells the error of the finer one (Richardson 1911, The approximate
 * arithmetical solution by finite differences; Roache 1994, J. Fluids Eng. 116, 405): for a second-order method it is
 * {@code (fine - coarse) / (2^2 - 1)}.
 */
public final class CoarserProblem {

    /** By how much a difference of heads on both grids exceeds the error of the finer: 2 squared less 1. */
    public static final double DIFFERENCE_OVER_ERROR = 3;

    private final MergedCells cells;
    private final FlowProblem problem;

    private CoarserProblem(MergedCells cells, FlowProblem problem) {
        this.cells = cells;
        this.problem = problem;
    }

    /**
     * The coarser problem.
     *
     * @param fine the problem
     * @return the same on cells twice as wide
     * @throws WiderCellsException if a boundary is too short for cells twice as wide
     */
    public static CoarserProblem of(FlowProblem fine) {
        Aquifer aquifer = fine.aquifer();
        MergedCells cells = new MergedCells(aquifer.grid(), aquifer.active());
        return new CoarserProblem(
                cells,
                new FlowProblem(
                        aquifer(aquifer, cells),
                        fine.sealingBed().map(bed -> bed(bed, cells)),
                        boundaries(fine.boundaries()),
                        fine.recharges().stream()
                                .map(recharge -> new Recharge(
                                        recharge.name(), cells.conserved(recharge.rate()), recharge.factor()))
                                .toList(),
                        fine.springs(),
                        fine.bores()));
    }

    private static Aquifer aquifer(Aquifer fine, MergedCells cells) {
        return new Aquifer(
                cells.grid(),
                cells.geometricMean(fine.transmissivityX()),
                cells.geometricMean(fine.transmissivityY()),
                cells.conserved(fine.storativity()),
                cells.mean(fine.top()),
                cells.mean(fine.bottom()),
                cells.active());
    }

    /** Keeps the sum of leakance and of the storage of the bed; the head above counts where it leaks. */
    private static SealingBed bed(SealingBed fine, MergedCells cells) {
        int fineCells = fine.thickness().length;
        double[] leakance = new double[fineCells];
        double[] inflow = new double[fineCells];
        double[] storage = new double[fineCells];
        for (int cell = 0; cell < fineCells; cell++) {
            leakance[cell] = fine.leakance(cell);
            inflow[cell] = leakance[cell] * fine.headAbove()[cell];
            storage[cell] = fine.specificStorage()[cell] * fine.thickness()[cell];
        }
        double[] thickness = cells.mean(fine.thickness());
        double[] conductivity = cells.conserved(leakance);
        double[] specificStorage = cells.conserved(storage);
        double[] headAbove = cells.conserved(inflow);
        double[] plainHeadAbove = cells.mean(fine.headAbove());
        for (int cell = 0; cell < thickness.length; cell++) {
            headAbove[cell] = conductivity[cell] > 0 ? headAbove[cell] / conductivity[cell] : plainHeadAbove[cell];
            conductivity[cell] *= thickness[cell];
            specificStorage[cell] /= thickness[cell];
        }
        return new SealingBed(thickness, conductivity, specificStorage, headAbove);
    }

    private static List<OuterBoundary> boundaries(List<OuterBoundary> fine) {
        return fine.stream().map(CoarserProblem::boundary).toList();
    }

    private static OuterBoundary boundary(OuterBoundary boundary) {
        SideSegment segment = segment(boundary);
        if (boundary instanceof OuterBoundary.FixedHead fixed) {
            return new OuterBoundary.FixedHead(fixed.name(), segment, fixed.head());
        }
        if (boundary instanceof OuterBoundary.GivenFlow given) {
            return new OuterBoundary.GivenFlow(given.name(), segment, given.inflow());
        }
        OuterBoundary.FarHead far = (OuterBoundary.FarHead) boundary;
        return new OuterBoundary.FarHead(far.name(), segment, far.head(), far.distance());
    }

    /** A merged cell goes to the boundary of its first part: neighbouring stretches then never overlap. */
    private static SideSegment segment(OuterBoundary boundary) {
        SideSegment fine = boundary.segment();
        int first = (fine.first() + 1) / 2;
        int last = fine.last() / 2;
        if (last < first) {
            throw new WiderCellsException(
                    "boundary '" + boundary.name() + "' is one cell long and has no place on cells twice as wide");
        }
        return new SideSegment(fine.side(), first, last);
    }

    /** The problem on the wider cells. */
    public FlowProblem problem() {
        return problem;
    }

    /** For each cell of the finer grid, the wider cell that holds it. */
    public int[] parents() {
        return cells.parents();
    }

    /**
     * Means over the wider cells, such as of heads at the start.
     *
     * @param values one value a cell of the finer grid; only those of the aquifer count where a wider cell has any
     * @return one value a wider cell
     */
    public double[] mean(double[] values) {
        return cells.mean(values);
    }
}

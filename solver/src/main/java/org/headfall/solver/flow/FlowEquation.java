package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.linear.FivePointMatrix;

/**
 * The linear part of the discrete flow equation, without bores and springs:
 * {@code storage dh/dt = -A h + sources(t)}. A is symmetric: minus the face conductances off the diagonal, and on it
 * their sum plus the conductances to given heads (boundaries, level above the sealing bed). Cells that do not belong to
 * the aquifer have the equation {@code head = 0}.
 *
 * <p>Tiny case: two cells side by side, 10 m square, T 5 m²/d, fixed head at the western face: east conductance
 * {5, 0}, diagonal {15, 5} (m²/d), sources {10 H, 0} (m³/d).
 */
public final class FlowEquation {

    private final Aquifer aquifer;
    private final List<BoundaryFaces> boundaries;
    private final List<RechargeCells> recharges;
    private final double[] eastConductance;
    private final double[] northConductance;
    private final double[] ties;
    private final double[] diagonal;
    private final double[] storage;
    private final double[] leakage;
    private final double[] leakageSource;
    private final double[] leakageFlow;

    /**
     * Assembles the equation of a problem.
     *
     * @param problem the problem; its bores and springs are left to {@link PointDischarges}
     */
    public FlowEquation(FlowProblem problem) {
        aquifer = problem.aquifer();
        boundaries = problem.boundaries().stream()
                .map(boundary -> BoundaryFaces.of(boundary, aquifer))
                .toList();
        recharges = problem.recharges().stream()
                .map(recharge -> new RechargeCells(recharge, aquifer))
                .toList();
        int cells = aquifer.grid().cellCount();
        eastConductance = new double[cells];
        northConductance = new double[cells];
        ties = new double[cells];
        diagonal = new double[cells];
        storage = new double[cells];
        leakage = new double[cells];
        leakageSource = new double[cells];
        leakageFlow = new double[cells];
        assembleFaces();
        problem.sealingBed().ifPresent(this::assembleLeakage);
        assembleDiagonal();
    }

    private void assembleFaces() {
        for (int cell = 0; cell < storage.length; cell++) {
            eastConductance[cell] = aquifer.eastConductance(cell);
            northConductance[cell] = aquifer.northConductance(cell);
            if (aquifer.active()[cell]) {
                storage[cell] = aquifer.storativity()[cell] * aquifer.grid().area(cell);
            }
        }
    }

    private void assembleLeakage(SealingBed bed) {
        for (int cell = 0; cell < leakage.length; cell++) {
            if (aquifer.active()[cell]) {
                leakage[cell] = aquifer.grid().area(cell) * bed.leakance(cell);
                leakageSource[cell] = leakage[cell] * bed.headAbove()[cell];
            }
        }
    }

    private void assembleDiagonal() {
        System.arraycopy(leakage, 0, ties, 0, ties.length);
        boundaries.forEach(boundary -> boundary.addTies(ties));
        for (int cell = 0; cell < diagonal.length; cell++) {
            diagonal[cell] = aquifer.active()[cell] ? ties[cell] + couplings(cell) : 1;
        }
    }

    /** Sum of the conductances between a cell and its neighbours (m²/d). */
    private double couplings(int cell) {
        int columns = aquifer.grid().columns();
        double sum = eastConductance[cell] + northConductance[cell];
        if (cell % columns > 0) {
            sum += eastConductance[cell - 1];
        }
        return cell >= columns ? sum + northConductance[cell - columns] : sum;
    }

    /** Number of cells. */
    public int size() {
        return diagonal.length;
    }

    /** The aquifer. */
    public Aquifer aquifer() {
        return aquifer;
    }

    /** Conductance between each cell and its eastern neighbour (m²/d), zero in the last column; not to be changed. */
    public double[] eastConductance() {
        return eastConductance;
    }

    /** Conductance between each cell and its northern neighbour (m²/d), zero in the last row; not to be changed. */
    public double[] northConductance() {
        return northConductance;
    }

    /** Diagonal of A (m²/d); not to be changed. */
    public double[] diagonal() {
        return diagonal;
    }

    /** Conductance of each cell to given heads: the level above the sealing bed and boundaries (m²/d); not to be changed. */
    double[] ties() {
        return ties;
    }

    /** Water released by each cell per metre of falling head, S times area (m²); not to be changed. */
    public double[] storage() {
        return storage;
    }

    /**
     * The part of the flow equation that does not depend on head.
     *
     * @param day time (d)
     * @param sources receives the inflow of each cell at zero head (m³/d)
     */
    public void sources(double day, double[] sources) {
        System.arraycopy(leakageSource, 0, sources, 0, sources.length);
        boundaries.forEach(boundary -> boundary.addSources(day, sources));
        recharges.forEach(recharge -> recharge.addSources(day, sources));
    }

    /**
     * {@code result = sources - A head}: net inflow of each cell (m³/d). Flow between cells is found from differences of head and
     * given to the one cell as it is taken from the other: so it cancels in the sum, and rounding is that of flows, not that
     * of conductance times head.
     *
     * @param sources right-hand side (m³/d)
     * @param head head of each cell (m)
     * @param result receives the net inflow; must be another array
     */
    public void netInflow(double[] sources, double[] head, double[] result) {
        int columns = aquifer.grid().columns();
        for (int cell = 0; cell < result.length; cell++) {
            double tie = aquifer.active()[cell] ? ties[cell] : diagonal[cell];
            result[cell] = sources[cell] - tie * head[cell];
        }
        for (int cell = 0; cell < result.length - 1; cell++) {
            double flow = eastConductance[cell] * (head[cell + 1] - head[cell]);
            result[cell] += flow;
            result[cell + 1] -= flow;
        }
        for (int cell = 0; cell < result.length - columns; cell++) {
            double flow = northConductance[cell] * (head[cell + columns] - head[cell]);
            result[cell] += flow;
            result[cell + columns] -= flow;
        }
    }

    /** Conductance of the sealing bed over each cell (m²/d); not to be changed. */
    double[] leakage() {
        return leakage;
    }

    /** Conductance of the sealing bed over each cell times the level above it (m³/d); not to be changed. */
    double[] leakageSource() {
        return leakageSource;
    }

    /** The boundaries, in the order of the problem. */
    List<BoundaryFaces> boundaries() {
        return boundaries;
    }

    /** The recharges, in the order of the problem. */
    List<RechargeCells> recharges() {
        return recharges;
    }

    /** Number of the linear terms of the water balance. */
    int termCount() {
        return 1 + boundaries.size() + recharges.size();
    }

    /** Names and kinds of the linear terms of the water balance, in the order of {@link #addFlows}. */
    List<WaterBalance.Term> terms() {
        List<WaterBalance.Term> terms = new ArrayList<>();
        terms.add(new WaterBalance.Term("leakage", WaterBalance.Kind.LEAKAGE, 0, 0));
        boundaries.forEach(
                boundary -> terms.add(new WaterBalance.Term(boundary.name(), WaterBalance.Kind.BOUNDARY, 0, 0)));
        recharges.forEach(
                recharge -> terms.add(new WaterBalance.Term(recharge.name(), WaterBalance.Kind.RECHARGE, 0, 0)));
        return terms;
    }

    /**
     * Adds the flow of each linear term at one moment.
     *
     * @param day time (d)
     * @param head head of each cell (m)
     * @param rates receives the flows (m³/d)
     * @param firstTerm term of the leakage; boundaries and recharges follow
     * @param loops runs the loops over all cells
     */
    void addFlows(double day, double[] head, FlowRates rates, int firstTerm, CellLoops loops) {
        loops.run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                leakageFlow[cell] = leakageSource[cell] - leakage[cell] * head[cell];
            }
        });
        loops.addFlows(leakageFlow, rates, firstTerm);
        int term = firstTerm + 1;
        for (BoundaryFaces boundary : boundaries) {
            boundary.addFlow(day, head, rates, term++);
        }
        for (RechargeCells recharge : recharges) {
            rates.add(term++, recharge.flow(day));
        }
    }

    /** Whether something ties the heads of every connected part of the aquifer down, so that a steady state exists. */
    boolean tied() {
        int columns = aquifer.grid().columns();
        return new FivePointMatrix(columns, size() / columns, diagonal, eastConductance, northConductance).isTiedDown();
    }
}

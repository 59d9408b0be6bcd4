package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.Schedule;
import org.jspecify.annotations.Nullable;

/**
 * The parts of a water balance that follow heads, as linear functions of drawdown: what aquifer and sealing bed have
 * released, then the flows by leakage and through each boundary that ties heads. Each flow has two parts, of the cells that
 * let water in at the start of a run and of those that let it out, for a balance counts the two apart.
 */
final class BalanceParts {

    /** Released by the aquifer, and by what of the bed follows head at once. */
    static final int STORAGE = 0;
    /** Released by the sealing bed. */
    static final int BED = 1;
    /** First of the flows. */
    static final int FIRST_FLOW = 2;

    private final double[] storage;
    private final @Nullable BedRelaxation bed;
    private final double[] bedContent;
    private final List<Flow> flows = new ArrayList<>();

    /**
     * Flow of some cells to a level each is tied to.
     *
     * @param term term of the balance among leakage, boundaries and recharges
     * @param enters whether it entered the aquifer at the start
     * @param conductance conductance of each cell (m²/d)
     * @param level level of all cells, null where each has its own (m above datum)
     * @param ownLevel level of each cell of the aquifer where that is so; else empty
     */
    @SuppressWarnings("ArrayRecordComponent") // read in loops, never compared
    record Flow(
            int term,
            boolean enters,
            CellWeights conductance,
            @Nullable Schedule level,
            double[] ownLevel) {}

    /**
     * Parts for a run.
     *
     * @param equation the flow equation
     * @param bed relaxation of the sealing bed, null if it stores nothing
     * @param startHead head of each cell at the start (m above datum)
     */
    BalanceParts(FlowEquation equation, @Nullable BedRelaxation bed, double[] startHead) {
        this.bed = bed;
        storage = equation.storage().clone();
        if (bed != null) {
            bed.addFastStorage(storage);
        }
        bedContent = new double[storage.length];
        addLeakage(equation, startHead);
        List<BoundaryFaces> boundaries = equation.boundaries();
        for (int i = 0; i < boundaries.size(); i++) {
            if (!boundaries.get(i).givesFlow()) {
                Schedule level = boundaries.get(i).schedule();
                double first = level.at(0);
                add(1 + i, boundaries.get(i).weights(), level, new double[0], cell -> first >= startHead[cell]);
            }
        }
    }

    private void addLeakage(FlowEquation equation, double[] startHead) {
        double[] leakage = equation.leakage();
        int[] cells = IntStream.range(0, leakage.length)
                .filter(cell -> leakage[cell] > 0)
                .toArray();
        double[] level = new double[leakage.length];
        for (int cell : cells) {
            level[cell] = equation.leakageSource()[cell] / leakage[cell];
        }
        double[] conductance =
                IntStream.of(cells).mapToDouble(cell -> leakage[cell]).toArray();
        add(0, new CellWeights(cells, conductance), null, level, cell -> level[cell] >= startHead[cell]);
    }

    private void add(
            int term, CellWeights all, @Nullable Schedule level, double[] ownLevel, IntPredicate entersThrough) {
        for (boolean enters : new boolean[] {true, false}) {
            int[] places = IntStream.range(0, all.cells().length)
                    .filter(k -> entersThrough.test(all.cells()[k]) == enters)
                    .toArray();
            CellWeights part = new CellWeights(
                    IntStream.of(places).map(k -> all.cells()[k]).toArray(),
                    IntStream.of(places).mapToDouble(k -> all.weights()[k]).toArray());
            flows.add(new Flow(term, enters, part, level, ownLevel));
        }
    }

    /** Whether there is a sealing bed that stores water. */
    boolean hasBed() {
        return bed != null;
    }

    /** Number of parts. */
    int count() {
        return FIRST_FLOW + flows.size();
    }

    /** The flows, in the order of their parts. */
    List<Flow> flows() {
        return flows;
    }

    /** What each cell releases per metre of fall at once (m²); not to be changed. */
    double[] storage() {
        return storage;
    }

    /** Prepares for solutions at a shift (1/d), zero for an even fall that has lasted for ever. */
    void prepare(double shift, CellLoops loops) {
        if (bed != null) {
            loops.run((from, to) -> bed.setContent(shift, bedContent, from, to));
        }
    }

    /** What the bed has released over each cell per metre of drawdown of a solution at the shift (m²); not to be changed. */
    double[] bedContent() {
        return bedContent;
    }

    /**
     * All parts of a solution at the shift.
     *
     * @param drawdown the solution of each cell
     * @param window rectangle outside of which it is zero
     * @return value of each part: m² times the unit of the solution for what has been released, m²/d times it for flows
     */
    double[] of(double[] drawdown, CellWindow window) {
        double[] parts = new double[count()];
        parts[STORAGE] = product(storage, drawdown, window);
        parts[BED] = bed == null ? 0 : product(bedContent, drawdown, window);
        for (int i = 0; i < flows.size(); i++) {
            parts[FIRST_FLOW + i] = flows.get(i).conductance().of(drawdown);
        }
        return parts;
    }

    /** Row by row, each in two sums that do not wait for each other. */
    private static double product(double[] weights, double[] field, CellWindow window) {
        double sum = 0;
        for (int row = window.firstRow(); row < window.endRow(); row++) {
            int offset = row * window.gridColumns();
            int end = offset + window.endColumn();
            double even = 0;
            double odd = 0;
            int cell = offset + window.firstColumn();
            for (; cell < end - 1; cell += 2) {
                even += weights[cell] * field[cell];
                odd += weights[cell + 1] * field[cell + 1];
            }
            if (cell < end) {
                even += weights[cell] * field[cell];
            }
            sum += even + odd;
        }
        return sum;
    }
}

package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.time.ImplicitSystem;
import org.headfall.solver.time.Step;
import org.jspecify.annotations.Nullable;

/**
 * Drawdown by a constant discharge at single bores or springs, everything else unchanged: one lane a cause, all lanes on
 * the same steps and solved together. Unknowns are the drawdowns of all cells of the first lane, then of the second, and
 * so on (m).
 */
public final class UnitResponseSystem implements ImplicitSystem {

    /** Error of drawdown that the linear solver may leave in a stage (m): responses stay symmetric to 1e-9 d/m². */
    private static final double HEAD_TOLERANCE = 1e-6;

    private final FlowEquation equation;
    private final PointDischarges points;
    private final List<ObservedHead> observed;
    private final int[] causes;
    private final double rate;
    private final int cells;
    private final double[] storage;
    private final StageMatrix matrix;
    private final @Nullable SealingBedStorage[] beds;
    private final double[] source;
    private final double[] laneBase;
    private final double[][] laneRates;
    private final double[][] right;
    private final double[][] correction;

    /**
     * System of some causes.
     *
     * @param problem the problem; its boundaries, rules and recharge do not matter, only what is linear
     * @param observed points that take no water, receptors only
     * @param causes indices of the causes: bores first, then springs
     * @param rate discharge of each cause (m³/d)
     * @param team threads of the linear solver
     */
    public UnitResponseSystem(
            FlowProblem problem, List<ObservedHead> observed, int[] causes, double rate, WorkerTeam team) {
        equation = new FlowEquation(problem);
        points = new PointDischarges(problem);
        this.observed = List.copyOf(observed);
        this.causes = causes.clone();
        this.rate = rate;
        cells = equation.size();
        storage = equation.storage().clone();
        beds = new SealingBedStorage[causes.length];
        BedRelaxation relaxation = problem.sealingBed()
                .filter(SealingBed::stores)
                .map(bed -> new BedRelaxation(bed, problem.aquifer()))
                .orElse(null);
        if (relaxation != null) {
            Arrays.setAll(beds, lane -> new SealingBedStorage(relaxation));
            relaxation.addFastStorage(storage);
        }
        matrix = new StageMatrix(equation, storage, relaxation, team);
        matrix.setHeadTolerance(HEAD_TOLERANCE);
        source = new double[cells];
        laneBase = new double[cells];
        laneRates = new double[2][cells];
        right = new double[causes.length][cells];
        correction = new double[causes.length][cells];
    }

    @Override
    public int size() {
        return cells * causes.length;
    }

    @Override
    public void startRate(double day, double[] state, double[] rates) {
        double[] drawdown = laneBase;
        for (int lane = 0; lane < causes.length; lane++) {
            int from = lane * cells;
            System.arraycopy(state, from, drawdown, 0, cells);
            Arrays.fill(source, 0);
            points.weights(causes[lane]).add(rate, source);
            equation.netInflow(source, drawdown, right[lane]);
            SealingBedStorage bed = beds[lane];
            if (bed != null) {
                bed.addFlow(1, right[lane]);
            }
            for (int cell = 0; cell < cells; cell++) {
                rates[from + cell] = storage[cell] > 0 ? right[lane][cell] / storage[cell] : 0;
            }
        }
    }

    @Override
    public void continueFromLastStage() {}

    @Override
    public void solveStage(
            int stage, double day, Step step, double[] base, double[][] earlierRates, double[] state, double[] rates) {
        matrix.prepare(step.coefficient());
        for (int lane = 0; lane < causes.length; lane++) {
            prepareLane(lane, stage, step, base, earlierRates, state);
        }
        matrix.solveAll(right, correction);
        for (int lane = 0; lane < causes.length; lane++) {
            completeLane(lane, stage, step, base, state, rates);
        }
    }

    /** Right-hand side of a lane's correction: what the guess leaves. */
    private void prepareLane(int lane, int stage, Step step, double[] base, double[][] earlierRates, double[] state) {
        int from = lane * cells;
        System.arraycopy(base, from, laneBase, 0, cells);
        Arrays.fill(source, 0);
        points.weights(causes[lane]).add(rate, source);
        SealingBedStorage bed = beds[lane];
        if (bed != null) {
            for (int earlier = 0; earlier < stage - 1; earlier++) {
                System.arraycopy(earlierRates[earlier], from, laneRates[earlier], 0, cells);
            }
            bed.prepareStage(stage, step.baseWeight(stage), step.coefficient(), laneRates, laneBase, source);
        }
        for (int cell = 0; cell < cells; cell++) {
            source[cell] += storage[cell] / step.coefficient() * laneBase[cell];
        }
        System.arraycopy(state, from, laneBase, 0, cells);
        matrix.residual(source, laneBase, right[lane]);
        Arrays.fill(correction[lane], 0);
    }

    private void completeLane(int lane, int stage, Step step, double[] base, double[] state, double[] rates) {
        int from = lane * cells;
        for (int cell = 0; cell < cells; cell++) {
            state[from + cell] += correction[lane][cell];
            rates[from + cell] = (state[from + cell] - base[from + cell]) / step.coefficient();
        }
        SealingBedStorage bed = beds[lane];
        if (bed != null) {
            System.arraycopy(base, from, laneBase, 0, cells);
            System.arraycopy(state, from, source, 0, cells);
            bed.completeStage(stage, step.coefficient(), laneBase, source);
        }
    }

    @Override
    public double errorAfter(double time, double[] error) {
        double damping = matrix.rung(time);
        matrix.prepare(damping);
        for (int lane = 0; lane < causes.length; lane++) {
            for (int cell = 0; cell < cells; cell++) {
                right[lane][cell] = storage[cell] / damping * error[lane * cells + cell];
            }
            Arrays.fill(correction[lane], 0);
        }
        matrix.dampAll(right, correction);
        double largest = 0;
        for (int lane = 0; lane < causes.length; lane++) {
            for (int cell = 0; cell < cells; cell++) {
                double left = correction[lane][cell];
                error[lane * cells + cell] = left;
                largest = Math.max(largest, Math.abs(left));
            }
        }
        return largest;
    }

    @Override
    public void accepted(double day, Step step, double[] before, double[] after) {
        for (SealingBedStorage bed : beds) {
            if (bed != null) {
                bed.accept();
            }
        }
    }

    /**
     * Drawdown at every receptor: at the wall of every bore, in the cell of every spring, at every point.
     *
     * @param state drawdowns (m)
     * @param responses receives the drawdown per discharge (d/m²), all receptors of the first lane, then of the second
     * @param from place of the first
     */
    public void responses(double[] state, double[] responses, int from) {
        responseRates(state, responses, from);
        int place = from;
        for (int cause : causes) {
            for (int i = 0; i < points.count(); i++) {
                responses[place++] += points.unresolved(i, cause);
            }
            for (ObservedHead point : observed) {
                responses[place++] += point.unresolved(cause);
            }
        }
    }

    /**
     * Rate of change of what {@link #responses} gives.
     *
     * @param rates rates of change of the drawdowns (m/d)
     * @param responses receives the rate of change per discharge (1/m²), in the order of {@link #responses}
     * @param from place of the first
     */
    public void responseRates(double[] rates, double[] responses, int from) {
        int place = from;
        for (int lane = 0; lane < causes.length; lane++) {
            for (int i = 0; i < points.count(); i++) {
                responses[place++] = points.weights(i).of(rates, lane * cells) / rate;
            }
            for (ObservedHead point : observed) {
                responses[place++] = point.weights().of(rates, lane * cells) / rate;
            }
        }
    }

    /** Length of a first step (d): a share of the time in which the fastest cell of a cause empties. */
    public double firstStep() {
        return IntStream.of(causes)
                .map(points::cell)
                .mapToDouble(cell -> equation.storage()[cell] / equation.diagonal()[cell])
                .min()
                .orElseThrow();
    }
}

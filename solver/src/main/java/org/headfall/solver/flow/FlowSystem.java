package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.time.ImplicitSystem;
import org.headfall.solver.time.Step;
import org.jspecify.annotations.Nullable;

/**
 * The flow equation with its bores, springs and sealing bed as a stiff system for the integrator: unknowns are the
 * heads of all cells (m). One system serves one run.
 */
public final class FlowSystem implements ImplicitSystem {

    /** Share of the accuracy of a step that the linear solver may leave in each of its stages. */
    private static final double SOLVER_SHARE = 1e-3;

    /** Share of the accuracy of a step by which the rules of bores and springs may be missed. */
    private static final double RULE_SHARE = 0.1;

    private static final int STAGES = 2;

    private static final double USUAL_FIRST_STEP = 1e-3;

    private final FlowEquation equation;
    private final PointDischarges points;
    private final PointRules pointRules;
    private final @Nullable SealingBedStorage bed;
    private final StageMatrix matrix;
    private final CoupledSolve coupled;
    private final BalanceRecorder balance;
    private final RateHistory history;
    private final CellLoops loops;
    private final double[] storage;
    private final RoundedBase roundedBase;
    private final double[] right;
    private final double[] released;
    private final double[][] discharge;
    private DischargeRule[] rules = new DischargeRule[0];
    private boolean anew;
    private double stretchEnd = Double.POSITIVE_INFINITY;

    /**
     * System of a problem.
     *
     * @param problem the problem
     * @param accuracy accuracy of head wanted of a step (m); the rules are met ten times closer
     * @param team threads of the linear solver; results do not depend on their number
     * @param startDay day the run starts (d)
     */
    public FlowSystem(FlowProblem problem, double accuracy, WorkerTeam team, double startDay) {
        equation = new FlowEquation(problem);
        points = new PointDischarges(problem);
        pointRules = new PointRules(problem);
        BedRelaxation relaxation = BedRelaxation.of(problem);
        storage = equation.storage().clone();
        if (relaxation != null) {
            relaxation.addFastStorage(storage);
        }
        bed = relaxation == null ? null : new SealingBedStorage(relaxation, team);
        matrix = new StageMatrix(equation, storage, relaxation, team);
        loops = matrix.loops();
        roundedBase = new RoundedBase(storage, loops);
        matrix.setHeadTolerance(SOLVER_SHARE * accuracy);
        coupled = new CoupledSolve(matrix, points, ruleTolerance(accuracy));
        balance = new BalanceRecorder(terms(problem, equation), startDay);
        history = new RateHistory(points.count(), startDay);
        right = new double[equation.size()];
        released = new double[equation.size()];
        discharge = new double[3][points.count()];
    }

    /**
     * Error of head by which the rules of bores and springs may be missed.
     *
     * @param accuracy accuracy of head wanted of a step (m)
     * @return the error (m)
     */
    public static double ruleTolerance(double accuracy) {
        return RULE_SHARE * accuracy;
    }

    /**
     * Error of head that the tolerances of the linear solver and of the rules allow after some steps: what the solver
     * may leave in each stage, as if none of it died away, and what the rules may be missed by at the end. Rules do not
     * add up: a bore whose rule is missed by a head acts as one whose outlet stands that much higher or lower.
     *
     * @param accuracy accuracy of head wanted of a step (m)
     * @param steps number of steps
     * @return the error (m)
     */
    public static double largestSolverError(double accuracy, int steps) {
        return ruleTolerance(accuracy) + SOLVER_SHARE * accuracy * STAGES * steps;
    }

    /** Names and kinds of all terms of the water balance of a problem. */
    static List<WaterBalance.Term> terms(FlowProblem problem, FlowEquation equation) {
        List<WaterBalance.Term> terms = new ArrayList<>();
        terms.add(new WaterBalance.Term("storage", WaterBalance.Kind.STORAGE, 0, 0));
        terms.add(new WaterBalance.Term("sealing bed storage", WaterBalance.Kind.SEALING_BED_STORAGE, 0, 0));
        terms.addAll(equation.terms());
        problem.bores().forEach(bore -> terms.add(new WaterBalance.Term(bore.name(), WaterBalance.Kind.BORE, 0, 0)));
        problem.springs()
                .forEach(spring -> terms.add(new WaterBalance.Term(spring.name(), WaterBalance.Kind.SPRING, 0, 0)));
        return terms;
    }

    @Override
    public int size() {
        return equation.size();
    }

    /**
     * Tells where the stretch ends in which rates and boundaries are smooth: at its very end the values before the
     * jump hold.
     *
     * @param day end of the stretch (d)
     */
    public void stretchUntil(double day) {
        stretchEnd = day;
    }

    private double within(double day) {
        return Math.min(day, Math.nextDown(stretchEnd));
    }

    /**
     * Steady heads under the rules in force at a day; the sealing bed has adjusted.
     *
     * @param day the day (d)
     * @param head in: a guess; out: the heads (m)
     * @throws NoSteadyStateException if nothing ties the heads of some part down: every side closed and nothing leaks
     */
    public void steady(double day, double[] head) {
        if (!equation.tied()) {
            throw new NoSteadyStateException(pointRules, day);
        }
        matrix.prepareSteady();
        equation.sources(day, right);
        rules = pointRules.at(day);
        coupled.solve(right, head, rules, head, discharge[0]);
    }

    @Override
    public void startRate(double day, double[] head, double[] rate) {
        equation.sources(day, right);
        equation.netInflow(right, head, rate);
        if (bed != null) {
            double[] fromBed = bed.released(1);
            for (int cell = 0; cell < rate.length; cell++) {
                rate[cell] += fromBed[cell];
            }
        }
        rules = pointRules.at(day);
        dischargeAtOnce(head, discharge[0]);
        points.takeFrom(rate, discharge[0]);
        for (int cell = 0; cell < rate.length; cell++) {
            rate[cell] = storage[cell] > 0 ? rate[cell] / storage[cell] : 0;
        }
        recordRates(1, day, head);
        anew = true;
    }

    /** Discharges at known heads of the cells: only drawdown close by and the bore's own loss matter. */
    private void dischargeAtOnce(double[] head, double[] rates) {
        int n = points.count();
        double[][] response = new double[n][n];
        double[] offered = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                response[i][j] = points.unresolved(i, j);
            }
            offered[i] = points.weights(i).of(head);
        }
        new DischargeEquilibrium(rules, response, offered, coupled.tolerance()).solve(rates);
    }

    @Override
    public void continueFromLastStage() {
        balance.continueFromLastStage();
        double[] spent = discharge[0];
        discharge[0] = discharge[2];
        discharge[2] = spent;
    }

    @Override
    public void baseFormed(int stage, Step step, double[] before, double[][] earlierRates, double[] base) {
        double throughput = balance.stage(1).totalOutflow() * step.length();
        if (roundedBase.matters(before, throughput)) {
            roundedBase.restore(stage, step, before, earlierRates, base);
        }
    }

    @Override
    public void solveStage(
            int stage, double day, Step step, double[] base, double[][] earlierRates, double[] head, double[] rate) {
        double coefficient = step.coefficient();
        matrix.prepare(coefficient);
        equation.sources(within(day), right);
        if (bed != null) {
            bed.prepareStage(stage, step.baseWeight(stage), coefficient, earlierRates, right);
        }
        rules = pointRules.at(within(day));
        System.arraycopy(discharge[stage - 2], 0, discharge[stage - 1], 0, points.count());
        coupled.solve(right, base, rules, head, discharge[stage - 1]);
        if (bed != null) {
            bed.completeStage(stage, coefficient, storage, matrix.release(), base, head);
        }
        loops.run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                rate[cell] = (head[cell] - base[cell]) / coefficient;
            }
        });
        recordRates(stage, within(day), head);
    }

    private void recordRates(int stage, double day, double[] head) {
        FlowRates rates = balance.stage(stage);
        rates.clear();
        if (bed != null) {
            loops.addFlows(bed.released(stage), rates, 1);
        }
        equation.addFlows(day, head, rates, 2, loops);
        int firstPoint = 2 + equation.termCount();
        for (int i = 0; i < points.count(); i++) {
            rates.add(firstPoint + i, -discharge[stage - 1][i]);
        }
    }

    @Override
    public double errorAfter(double time, double[] error) {
        if (!matrix.isPreparedFor(time)) {
            matrix.prepare(matrix.rung(time));
        }
        matrix.damp(error);
        return loops.largest(error);
    }

    @Override
    public void accepted(double day, Step step, double[] before, double[] after) {
        loops.run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                released[cell] = storage[cell] * (before[cell] - after[cell]);
            }
        });
        balance.add(step, released, loops);
        if (bed != null) {
            bed.accept();
        }
        double[] mean = new double[points.count()];
        for (int i = 0; i < mean.length; i++) {
            for (int stage = 1; stage <= discharge.length; stage++) {
                mean[i] += step.weight(stage) * discharge[stage - 1][i] / step.length();
            }
        }
        double[] atEnd = discharge[2];
        double[] wallHeads = new double[points.count()];
        Arrays.setAll(wallHeads, i -> points.wallHead(i, after, atEnd));
        history.add(day, anew, mean, atEnd, wallHeads);
        anew = false;
    }

    /**
     * Length of a first step after rates jump: a share of the shortest time in which a cell with a bore or spring
     * empties into its neighbours.
     *
     * @return length (d)
     */
    public double firstStep() {
        double shortest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points.count(); i++) {
            int cell = points.cell(i);
            shortest = Math.min(shortest, equation.storage()[cell] / equation.diagonal()[cell]);
        }
        return Double.isFinite(shortest) ? shortest : USUAL_FIRST_STEP;
    }

    /** Discharge of a point at the state reached, bores first, then springs (m³/d). */
    public double discharge(int point) {
        return discharge[0][point];
    }

    /** Head at the wall of a point at the state reached (m above datum). */
    public double wallHead(int point, double[] head) {
        return points.wallHead(point, head, discharge[0]);
    }

    /** Level of the water in a bore at the state reached (m above datum). */
    public double levelInBore(int bore, double[] head) {
        return pointRules.levelInBore(bore, wallHead(bore, head), discharge[0][bore]);
    }

    /** Discharge asked of a point at the state reached (m³/d); what it gives where the rule leaves it to head. */
    public double wantedDischarge(int point) {
        double asked = rules[point].asked();
        return Double.isNaN(asked) ? discharge[0][point] : asked;
    }

    /** Closes the water balance at a day and begins the next. */
    public WaterBalance closeBalance(double day) {
        return balance.close(day);
    }

    /** Largest balance discrepancy of a step over its throughput (-). */
    public double largestBalanceDiscrepancy() {
        return balance.largestOfRun();
    }

    /** Mean discharges of all steps. */
    public RateHistory rateHistory() {
        return history;
    }

    /** Linear systems solved. */
    public long linearSolves() {
        return matrix.solves();
    }

    /** Iterations of the linear solver in all. */
    public long linearIterations() {
        return matrix.iterations();
    }
}

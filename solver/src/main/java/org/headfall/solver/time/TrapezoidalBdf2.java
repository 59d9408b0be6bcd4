package org.headfall.solver.time;

import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.wording.PlainNumber;

/**
 * Adaptive TR-BDF2 integrator: second order, L-stable, with an embedded error estimate of third order (Bank and others
 * 1985; Hosea and Shampine 1996). Lands exactly on the end of each stretch. One integrator serves one run.
 */
public final class TrapezoidalBdf2 {

    /** Accepted steps before a length that was rejected is tried again: a rejected step costs as much as an accepted one. */
    private static final int CAUTIOUS_STEPS = 12;

    /** Unknowns worth a thread of their own. */
    private static final int GRAIN = 4096;

    private final ImplicitSystem system;
    private final StepControl control;
    private final WorkerTeam team;
    private final double[][] rates;
    private final double[] base;
    private final double[] stageState;
    private final double[] error;
    private final AccumulatedError accumulated;
    private boolean started;
    private double wantedLength;
    /** Time from the start of the step to the second stage of the attempt before (d); NaN where that does not help. */
    private double lastSecond = Double.NaN;

    private double tooLong = Double.POSITIVE_INFINITY;
    private int stepsSinceRejection;
    private long steps;
    private long rejected;
    private double largestError;

    /**
     * Integrator of a system.
     *
     * @param system what is integrated
     * @param control step lengths
     * @param team threads that share the loops over the unknowns
     */
    public TrapezoidalBdf2(ImplicitSystem system, StepControl control, WorkerTeam team) {
        this.system = system;
        this.control = control;
        this.team = team;
        rates = new double[3][system.size()];
        base = new double[system.size()];
        stageState = new double[system.size()];
        error = new double[system.size()];
        accumulated = new AccumulatedError(system);
    }

    /**
     * Error of the solution at the end of the last stretch: the estimates of all steps with their signs, carried on through
     * the system as the solution carries its own errors, which costs one more implicit step for each stretch.
     *
     * @return error of each unknown; not to be changed, overwritten by the next stretch
     */
    public double[] accumulatedError() {
        return accumulated.values();
    }

    /**
     * Forgets the history: the right-hand side jumps here, so the next step starts anew with a given length.
     *
     * @param firstLength length of the next step (d)
     */
    public void restart(double firstLength) {
        started = false;
        wantedLength = control.bounded(firstLength);
        tooLong = Double.POSITIVE_INFINITY;
    }

    /**
     * Integrates over a stretch in which the right-hand side is smooth.
     *
     * @param state in: y at {@code from}; out: y at {@code to}
     * @param from start (d)
     * @param to end (d), met exactly
     * @throws StepSizeException if the tolerance needs steps below the smallest allowed
     */
    public void integrate(double[] state, double from, double to) {
        double day = from;
        if (!started) {
            system.startRate(day, state, rates[0]);
            started = true;
        }
        lastSecond = Double.NaN;
        accumulated.carry(to - from);
        while (day < to) {
            double remaining = to - day;
            Step step = new Step(control.landing(wantedLength, remaining));
            boolean last = step.length() >= remaining;
            double estimate = attempt(state, day, step, to);
            if (control.accepts(estimate)) {
                day = last ? to : day + step.length();
                accept(state, day, step, estimate);
            } else {
                reject(day, step, estimate);
            }
        }
    }

    /**
     * One step and the error that it leaves when the state is looked at next: at the end of the stretch, or one implicit
     * stage later if the step ends there.
     */
    private double attempt(double[] state, double day, Step step, double end) {
        stage(2, state, day + Step.GAMMA * step.length(), step);
        stage(3, state, day + step.length(), step);
        double[] first = rates[0];
        double[] second = rates[1];
        double[] third = rates[2];
        double firstWeight = step.errorWeight(1);
        double secondWeight = step.errorWeight(2);
        double thirdWeight = step.errorWeight(3);
        team.split(error.length, GRAIN, (from, to) -> {
            for (int i = from; i < to; i++) {
                error[i] = firstWeight * first[i] + secondWeight * second[i] + thirdWeight * third[i];
            }
        });
        return system.errorAfter(Math.max(step.coefficient(), end - day - step.length()), error);
    }

    /** Known part from the earlier stages, guess from a rate continued through two earlier ones, then the implicit solve. */
    private void stage(int stage, double[] state, double day, Step step) {
        double firstWeight = step.baseWeight(stage);
        double secondWeight = stage == 2 ? 0 : firstWeight;
        double coefficient = step.coefficient();
        double secondShare = stage == 2 ? shareOfLastSecond(step) : 1 / Step.GAMMA;
        double firstShare = 1 - secondShare;
        double[] first = rates[0];
        double[] second = rates[1];
        team.split(base.length, GRAIN, (from, to) -> {
            for (int i = from; i < to; i++) {
                base[i] = state[i] + firstWeight * first[i] + secondWeight * second[i];
            }
            for (int i = from; i < to; i++) {
                stageState[i] = base[i] + coefficient * (firstShare * first[i] + secondShare * second[i]);
            }
        });
        system.baseFormed(stage, step, state, rates, base);
        system.solveStage(stage, day, step, base, rates, stageState, rates[stage - 1]);
    }

    /**
     * Weight of the second stage of the last attempt where its rate and that at the start of the step lie on a straight line
     * through that of the new second stage; zero where the right-hand side bends between them.
     */
    private double shareOfLastSecond(Step step) {
        return Double.isNaN(lastSecond) ? 0 : Step.GAMMA * step.length() / lastSecond;
    }

    private void accept(double[] state, double day, Step step, double estimate) {
        system.accepted(day, step, state, stageState);
        team.split(state.length, GRAIN, (from, to) -> {
            System.arraycopy(stageState, from, state, from, to - from);
            accumulated.add(error, from, to);
        });
        double[] spent = rates[0];
        rates[0] = rates[2];
        rates[2] = spent;
        system.continueFromLastStage();
        lastSecond = (Step.GAMMA - 1) * step.length();
        steps++;
        largestError = Math.max(largestError, estimate);
        if (++stepsSinceRejection > CAUTIOUS_STEPS) {
            tooLong = Double.POSITIVE_INFINITY;
        }
        double next = Math.min(control.next(step.length(), estimate), control.justBelow(tooLong));
        wantedLength = step.length() < wantedLength ? Math.max(wantedLength, next) : next;
    }

    private void reject(double day, Step step, double estimate) {
        rejected++;
        if (!Double.isFinite(estimate)) {
            throw new ArithmeticException("the solution is not a number at day " + PlainNumber.of(day));
        }
        double shorter = control.shorter(step.length(), estimate);
        if (shorter < control.smallest()) {
            throw new StepSizeException(day, shorter, control.smallest());
        }
        lastSecond = Step.GAMMA * step.length();
        wantedLength = shorter;
        tooLong = step.length();
        stepsSinceRejection = 0;
    }

    /** Accepted steps so far. */
    public long steps() {
        return steps;
    }

    /** Rejected steps so far. */
    public long rejectedSteps() {
        return rejected;
    }

    /** Largest error estimate of an accepted step so far. */
    public double largestError() {
        return largestError;
    }
}

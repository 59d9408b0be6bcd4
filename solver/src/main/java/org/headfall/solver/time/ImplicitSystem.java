package org.headfall.solver.time;

/**
 * A stiff system {@code dy/dt = f(t, y)} that can solve one implicit stage at a time. The stages of a step come in
 * order 1, 2, 3; a step that is rejected begins again at stage 2.
 */
public interface ImplicitSystem {

    /** Number of unknowns. */
    int size();

    /**
     * Stage 1 after a restart: the rate of change at a known state, {@code rate = f(day, state)}.
     *
     * @param day time (d)
     * @param state y, not changed
     * @param rate receives dy/dt
     */
    void startRate(double day, double[] state, double[] rate);

    /** The next step goes on from the last accepted one: its stage 1 is the former stage 3. */
    void continueFromLastStage();

    /**
     * Told of the known part of a stage, {@code base = before + weight (sum of the earlier rates)}, before the stage is
     * solved. A step so short that y changes by less than its last place in most unknowns loses those changes by rounding; a
     * system that conserves something may give back to a few unknowns what all have lost.
     *
     * @param stage 2 or 3
     * @param step length and weights of the step
     * @param before y at the start of the step, not changed
     * @param earlierRates rates of the stages before this one, not changed
     * @param base known part, may be changed by no more than rounding has taken from it in all
     */
    void baseFormed(int stage, Step step, double[] before, double[][] earlierRates, double[] base);

    /**
     * Solves {@code state = base + coefficient f(day, state)}.
     *
     * @param stage 2 or 3
     * @param day time of the stage (d)
     * @param step length and weights of the step
     * @param base known part, not changed
     * @param earlierRates rates of the stages before this one, not changed
     * @param state in: a guess; out: the solution
     * @param rate receives {@code f(day, state) = (state - base) / coefficient}
     */
    void solveStage(
            int stage, double day, Step step, double[] base, double[][] earlierRates, double[] state, double[] rate);

    /**
     * Measures what is left of an error after a time, by one implicit step of first order over it. So errors that fade
     * before anybody looks do not force short steps; an implicit step of first order damps less than the system does,
     * so what is left is not made too small.
     *
     * @param time time after which the error counts (d), positive
     * @param error error of each unknown, overwritten by what is left
     * @return largest absolute value left
     */
    double errorAfter(double time, double[] error);

    /**
     * The step has been accepted.
     *
     * @param day time reached (d)
     * @param step the step
     * @param before y at the start of the step
     * @param after y at its end
     */
    void accepted(double day, Step step, double[] before, double[] after);
}

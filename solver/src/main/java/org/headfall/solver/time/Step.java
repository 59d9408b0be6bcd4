package org.headfall.solver.time;

/**
 * One step of the TR-BDF2 pair as a diagonally implicit Runge-Kutta method with an explicit first stage (Hosea and
 * Shampine 1996, Applied Numerical Mathematics 20, 21-37, table 1). Stage 2 stands at {@code t + gamma dt}, stage 3 at
 * {@code t + dt}; both implicit stages share the coefficient {@code d dt}.
 *
 * @param length dt (d), positive
 */
public record Step(double length) {

    /** Place of stage 2 within the step, 2 - sqrt 2. */
    public static final double GAMMA = 2 - Math.sqrt(2);

    /** Weight of the implicit part of stages 2 and 3. */
    public static final double DIAGONAL = GAMMA / 2;

    /** Weight of stages 1 and 2 in the result. */
    public static final double OUTER = Math.sqrt(2) / 4;

    private static final double[] RESULT = {OUTER, OUTER, DIAGONAL};
    private static final double[] COMPARISON = {(1 - OUTER) / 3, (3 * OUTER + 1) / 3, DIAGONAL / 3};

    /** Coefficient of the implicit stages, d dt (d). */
    public double coefficient() {
        return DIAGONAL * length;
    }

    /**
     * Weight of a stage in the result.
     *
     * @param stage 1, 2 or 3
     * @return weight of the stage's rate, times dt (d)
     */
    public double weight(int stage) {
        return RESULT[stage - 1] * length;
    }

    /** Weight of a stage in the error estimate, times dt (d): result of second order less comparison of third. */
    double errorWeight(int stage) {
        return (RESULT[stage - 1] - COMPARISON[stage - 1]) * length;
    }

    /**
     * Weight of an earlier stage in the known part of a later one.
     *
     * @param stage the later stage, 2 or 3
     * @return weight of the rate of every earlier stage, times dt (d): the same for all of them
     */
    public double baseWeight(int stage) {
        return (stage == 2 ? DIAGONAL : OUTER) * length;
    }
}

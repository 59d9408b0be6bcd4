package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.positive;

/**
 * The straight line that drawdown follows against the logarithm of time or distance once it is old:
 * {@code s = Q/(4 pi T) ln(4 exp(-gamma) T t/(r² S))}.
 *
 * <p>It is below the solution of Theis by 0.25 percent at {@code u = r² S/(4 T t) = 0.01}, by 2 percent at 0.05 and by 5.4
 * percent at 0.1, and falls below zero beyond the {@linkplain #radiusOfInfluence radius of influence}. For that reason it
 * cannot be superposed and is no {@link RadialSolution}.
 *
 * <p>Source: Cooper and Jacob (1946), Transactions AGU 27, 526-534.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 */
public record CooperJacobSolution(double transmissivity, double storativity) {
    /** {@code 4 exp(-gamma)}, printed as 2.25 in the literature. */
    private static final double FOUR_EXP_MINUS_EULER = 4 * Math.exp(-0.5772156649015329);

    private static final double LARGEST_ARGUMENT = 0.01;

    /** Checks the properties. */
    public CooperJacobSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
    }

    /**
     * Aquifer whose drawdown follows a given straight line against the logarithm of time.
     *
     * @param rate rate taken out (m³/d), positive
     * @param distance distance from the bore (m), positive
     * @param drawdownPerCycle growth of drawdown over a tenfold time (m), positive
     * @param interceptTime time at which the line meets zero drawdown (d), positive
     * @return the solution with {@code T = ln(10) Q/(4 pi ds)} and {@code S = 2.25 T t0/r²}
     * @throws IllegalArgumentException if an argument is not positive
     */
    public static CooperJacobSolution fromLine(
            double rate, double distance, double drawdownPerCycle, double interceptTime) {
        positive("drawdown per cycle", drawdownPerCycle);
        double transmissivity = Math.log(10) * positive("rate", rate) / (4 * Math.PI * drawdownPerCycle);
        double time = positive("intercept time", interceptTime);
        double square = positive("distance", distance) * distance;
        return new CooperJacobSolution(transmissivity, FOUR_EXP_MINUS_EULER * transmissivity * time / square);
    }

    /**
     * Drawdown on the line.
     *
     * @param rate rate taken out (m³/d)
     * @param distance distance from the bore (m), positive
     * @param time time since pumping began (d), positive
     * @return drawdown (m); of the wrong sign beyond the radius of influence
     * @throws IllegalArgumentException if distance or time is not positive
     */
    public double drawdown(double rate, double distance, double time) {
        double ratio = radiusOfInfluence(time) / positive("distance", distance);
        return rate / (2 * Math.PI * transmissivity) * Math.log(ratio);
    }

    /**
     * Distance at which the line meets zero drawdown, {@code 1.5 sqrt(T t/S)}; a convention, for the true drawdown there
     * is still {@code 0.49 Q/(4 pi T)}.
     *
     * @param time time since pumping began (d), positive
     * @return distance (m)
     * @throws IllegalArgumentException if the time is not positive
     */
    public double radiusOfInfluence(double time) {
        return Math.sqrt(FOUR_EXP_MINUS_EULER * transmissivity * positive("time", time) / storativity);
    }

    /**
     * Whether the line is within 0.25 percent of the solution of Theis, {@code u <= 0.01}.
     *
     * @param distance distance from the bore (m), positive
     * @param time time since pumping began (d), positive
     * @return true where the line may be used
     * @throws IllegalArgumentException if distance or time is not positive
     */
    public boolean appliesAt(double distance, double time) {
        double square = positive("distance", distance) * distance;
        return square * storativity <= LARGEST_ARGUMENT * 4 * transmissivity * positive("time", time);
    }
}

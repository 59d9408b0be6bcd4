package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.positive;

/**
 * Difference of drawdown between two distances in steady radial flow: {@code s1 - s2 = Q/(2 pi T) ln(r2/r1)}.
 *
 * <p>It also holds while drawdown still grows, once {@code u = r² S/(4 T t) < 0.01} at both distances.
 *
 * <p>Source: Thiem (1906), Hydrologische Methoden.
 *
 * @param transmissivity T (m²/d), positive
 */
public record ThiemSolution(double transmissivity) {

    /** Checks the transmissivity. */
    public ThiemSolution {
        positive("transmissivity", transmissivity);
    }

    /**
     * Aquifer that shows a given difference of drawdown between two distances.
     *
     * @param rate rate taken out (m³/d), positive
     * @param nearDistance distance of the nearer point from the bore (m), positive
     * @param farDistance distance of the farther point from the bore (m), beyond the nearer
     * @param difference drawdown at the nearer less that at the farther point (m), positive
     * @return the solution with {@code T = Q ln(r2/r1)/(2 pi (s1 - s2))}
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static ThiemSolution fromDifference(
            double rate, double nearDistance, double farDistance, double difference) {
        double logarithm = Math.log(positive("far distance", farDistance) / positive("near distance", nearDistance));
        positive("logarithm of far over near distance", logarithm);
        positive("difference of drawdown", difference);
        return new ThiemSolution(positive("rate", rate) * logarithm / (2 * Math.PI * difference));
    }

    /**
     * Drawdown at the nearer point less that at the farther one.
     *
     * @param rate rate taken out (m³/d)
     * @param nearDistance distance of the nearer point from the bore (m), positive
     * @param farDistance distance of the farther point from the bore (m), positive
     * @return difference of drawdown (m)
     * @throws IllegalArgumentException if a distance is not positive
     */
    public double drawdownDifference(double rate, double nearDistance, double farDistance) {
        double ratio = positive("far distance", farDistance) / positive("near distance", nearDistance);
        return rate / (2 * Math.PI * transmissivity) * Math.log(ratio);
    }
}

package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.finite;
import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.WellFunction;

/**
 * Drawdown around a bore in an unbounded aquifer whose transmissivity depends on direction: {@code s = Q/(4 pi Te) W(u)}
 * with {@code Te = sqrt(Txx Tyy - Txy²)} and {@code u = S/(4t) (Txx y² + Tyy x² - 2 Txy x y)/Te²}.
 *
 * <p>Source: Papadopulos (1965), Nonsteady flow to a well in an infinite anisotropic aquifer, IASH symposium Dubrovnik.
 *
 * @param transmissivityX Txx (m²/d), positive
 * @param transmissivityY Tyy (m²/d), positive
 * @param transmissivityXY Txy (m²/d), its square below {@code Txx Tyy}; zero where the principal axes are those of the grid
 * @param storativity S, positive
 */
public record AnisotropicTheisSolution(
        double transmissivityX, double transmissivityY, double transmissivityXY, double storativity)
        implements UnboundedSolution {

    /** Checks the properties. */
    public AnisotropicTheisSolution {
        positive("transmissivity along x", transmissivityX);
        positive("transmissivity along y", transmissivityY);
        finite("mixed transmissivity", transmissivityXY);
        positive("determinant of the transmissivity", determinant(transmissivityX, transmissivityY, transmissivityXY));
        positive("storativity", storativity);
    }

    /**
     * Aquifer whose principal axes are those of the plan.
     *
     * @param transmissivityX transmissivity along x (m²/d), positive
     * @param transmissivityY transmissivity along y (m²/d), positive
     * @param storativity storativity, positive
     * @return the solution
     * @throws IllegalArgumentException if a property is not positive
     */
    public static AnisotropicTheisSolution alongAxes(
            double transmissivityX, double transmissivityY, double storativity) {
        return new AnisotropicTheisSolution(transmissivityX, transmissivityY, 0, storativity);
    }

    private static double determinant(double xx, double yy, double xy) {
        return xx * yy - xy * xy;
    }

    private double determinant() {
        return determinant(transmissivityX, transmissivityY, transmissivityXY);
    }

    /** Transmissivity of the isotropic aquifer with the same drawdown at equivalent distances (m²/d). */
    public double effectiveTransmissivity() {
        return Math.sqrt(determinant());
    }

    @Override
    public boolean mirrorSymmetric() {
        return transmissivityXY == 0;
    }

    @Override
    public double drawdown(double rate, double offsetX, double offsetY, double time) {
        double squareTimesTransmissivity = transmissivityX * offsetY * offsetY
                + transmissivityY * offsetX * offsetX
                - 2 * transmissivityXY * offsetX * offsetY;
        positive("distance, its square times transmissivity,", squareTimesTransmissivity);
        return drawdownAt(rate, squareTimesTransmissivity / effectiveTransmissivity(), time);
    }

    /**
     * Drawdown in a round bore, which in the equivalent isotropic plane is an ellipse and acts like a circle of the mean of
     * its half axes, {@code r_w ((T1/T2)^(1/4) + (T2/T1)^(1/4))/2} with the principal transmissivities T1 and T2.
     *
     * @param rate rate taken out (m³/d)
     * @param boreRadius radius of the bore (m), positive
     * @param time time since pumping began (d), not negative
     * @return drawdown (m)
     * @throws IllegalArgumentException if the radius is not positive or the time is negative
     */
    public double drawdownInBore(double rate, double boreRadius, double time) {
        double mean = (transmissivityX + transmissivityY) / 2;
        double largest = mean + Math.hypot((transmissivityX - transmissivityY) / 2, transmissivityXY);
        double stretch = Math.sqrt(largest / effectiveTransmissivity());
        double radius = positive("radius of the bore", boreRadius) * (stretch + 1 / stretch) / 2;
        return drawdownAt(rate, radius * radius, time);
    }

    /** Drawdown at the square of a distance in the equivalent isotropic plane. */
    private double drawdownAt(double rate, double equivalentSquare, double time) {
        double effective = effectiveTransmissivity();
        double u = equivalentSquare * storativity / (4 * effective * notNegative("time", time));
        return rate / (4 * Math.PI * effective) * WellFunction.of(u);
    }
}

package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.apache.commons.math3.complex.Complex;
import org.headfall.solver.analytic.function.ComplexModifiedBessel;
import org.headfall.solver.analytic.function.LaplaceInversion;
import org.headfall.solver.analytic.function.LeakyWellFunction;
import org.headfall.solver.analytic.function.StoringBedWellFunction;
import org.headfall.solver.analytic.function.WellFunction;

/**
 * Drawdown around a bore in an aquifer under a sealing bed that leaks and gives up stored water, for all times.
 *
 * <p>The Laplace transform of drawdown is {@code Q/(2 pi T p) K0(q r)} with {@code q² = p S/T + z coth(z)/B²} under a fixed
 * head and {@code q² = p S/T + z tanh(z)/B²} under a closed top, {@code z = sqrt(p S' c)}, {@code B = sqrt(T c)}; it is
 * inverted numerically to 1e-11 of {@code Q/(4 pi T)}.
 *
 * <p>Source: Hantush (1960), Journal of Geophysical Research 65(11), 3713-3725.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S of the aquifer, positive
 * @param hydraulicResistance c, thickness of the bed over its vertical conductivity (d), positive
 * @param bedStorativity S', specific storage of the bed times its thickness, not negative
 * @param top what lies on top of the bed
 */
public record StoringBedSolution(
        double transmissivity, double storativity, double hydraulicResistance, double bedStorativity, BedTop top)
        implements RadialSolution {

    /** Within this argument two terms of the series of z coth z and z tanh z are exact. */
    private static final double SMALL = 1e-4;

    /** Checks the properties. */
    public StoringBedSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("hydraulic resistance", hydraulicResistance);
        notNegative("storativity of the bed", bedStorativity);
    }

    /** Response time of the bed, {@code c S' = b'² Ss'/K'} (d). */
    public double bedResponseTime() {
        return hydraulicResistance * bedStorativity;
    }

    @Override
    public double drawdown(double rate, double distance, double time) {
        positive("distance", distance);
        if (notNegative("time", time) == 0) {
            return 0;
        }
        return unitRateFactor(rate) * LaplaceInversion.at(time, p -> transform(p, distance));
    }

    /**
     * Early drawdown, {@code Q/(4 pi T) H(u, beta)}; valid while {@code t < c S'/10}.
     *
     * @param rate rate taken out (m³/d)
     * @param distance distance from the bore (m), positive
     * @param time time since pumping began (d), positive
     * @return drawdown (m)
     * @throws IllegalArgumentException if distance or time is not positive
     */
    public double earlyDrawdown(double rate, double distance, double time) {
        double beta = positive("distance", distance)
                / 4
                * Math.sqrt(bedStorativity / (storativity * transmissivity * hydraulicResistance));
        return unitRateFactor(rate) * StoringBedWellFunction.of(argument(distance, time), beta);
    }

    /**
     * Late drawdown: {@code Q/(4 pi T) W(u (1 + S'/(3S)), r/B)} for {@code t > 5 c S'} under a fixed head,
     * {@code Q/(4 pi T) W(u (1 + S'/S))} for {@code t > 10 c S'} under a closed top.
     *
     * @param rate rate taken out (m³/d)
     * @param distance distance from the bore (m), positive
     * @param time time since pumping began (d), positive
     * @return drawdown (m)
     * @throws IllegalArgumentException if distance or time is not positive
     */
    public double lateDrawdown(double rate, double distance, double time) {
        double u = argument(distance, time);
        double scaled = distance / Math.sqrt(transmissivity * hydraulicResistance);
        double storageRatio = bedStorativity / storativity;
        return unitRateFactor(rate)
                * switch (top) {
                    case FIXED_HEAD -> LeakyWellFunction.of(u * (1 + storageRatio / 3), scaled);
                    case CLOSED -> WellFunction.of(u * (1 + storageRatio));
                };
    }

    private double unitRateFactor(double rate) {
        return rate / (4 * Math.PI * transmissivity);
    }

    private double argument(double distance, double time) {
        double square = positive("distance", distance) * distance;
        return square * storativity / (4 * transmissivity * positive("time", time));
    }

    /** Transform of {@code 4 pi T s/Q}: {@code 2 K0(q r)/p}. */
    private Complex transform(Complex p, double distance) {
        double leakageFactorSquare = transmissivity * hydraulicResistance;
        Complex fromAquifer = p.multiply(storativity / transmissivity);
        Complex fromBed = bedFactor(p.multiply(bedResponseTime())).divide(leakageFactorSquare);
        Complex scaledDistance = fromAquifer.add(fromBed).sqrt().multiply(distance);
        Complex k0 = ComplexModifiedBessel.at(scaledDistance)
                .scaledK0()
                .multiply(scaledDistance.negate().exp());
        return k0.multiply(2).divide(p);
    }

    /** {@code z coth z} or {@code z tanh z} for {@code z²}. */
    private Complex bedFactor(Complex square) {
        Complex z = square.sqrt();
        if (z.abs() < SMALL) {
            return switch (top) {
                case FIXED_HEAD -> square.divide(3).add(1);
                case CLOSED -> square.subtract(square.multiply(square).divide(3));
            };
        }
        Complex fading = z.multiply(-2).exp();
        Complex tanh = Complex.ONE.subtract(fading).divide(fading.add(1));
        return switch (top) {
            case FIXED_HEAD -> z.divide(tanh);
            case CLOSED -> z.multiply(tanh);
        };
    }
}

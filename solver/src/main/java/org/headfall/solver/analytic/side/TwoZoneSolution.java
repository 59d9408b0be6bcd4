package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.TheisSolution;

/**
 * Drawdown in an unbounded aquifer of two zones of equal diffusivity that meet along the line {@code x = 0}.
 *
 * <p>In the bore's own zone {@code s = Q/(4 pi T) (W(u) + k W(u_image))} with {@code k = (T - T')/(T + T')}, T' beyond the
 * contact; in the other zone {@code s = Q/(2 pi (T + T')) W(u)}. A bore on the contact belongs to either.
 *
 * <p>Source: the method of images of potential theory (Carslaw and Jaeger 1959, Conduction of heat in solids, section
 * 14.7), here for equal diffusivity, where it is exact at all times.
 *
 * @param leftTransmissivity transmissivity where {@code x < 0} (m²/d), positive
 * @param rightTransmissivity transmissivity where {@code x >= 0} (m²/d), positive
 * @param diffusivity T/S of both zones (m²/d), positive
 */
public record TwoZoneSolution(double leftTransmissivity, double rightTransmissivity, double diffusivity)
        implements DrawdownField {

    /** Checks the properties. */
    public TwoZoneSolution {
        positive("transmissivity on the left", leftTransmissivity);
        positive("transmissivity on the right", rightTransmissivity);
        positive("diffusivity", diffusivity);
    }

    @Override
    public double drawdown(PumpedBore bore, double x, double y, double time) {
        boolean boreOnRight = bore.x() >= 0;
        double own = boreOnRight ? rightTransmissivity : leftTransmissivity;
        double other = boreOnRight ? leftTransmissivity : rightTransmissivity;
        double mean = (own + other) / 2;
        double offsetY = y - bore.y();
        double direct = Math.hypot(x - bore.x(), offsetY);
        if (boreOnRight != x >= 0) {
            return drawdown(mean, bore, direct, time);
        }
        double reflected = Math.hypot(x + bore.x(), offsetY);
        double reflection = (own - other) / (own + other);
        return drawdown(own, bore, direct, time) + reflection * drawdown(own, bore, reflected, time);
    }

    private double drawdown(double transmissivity, PumpedBore bore, double distance, double time) {
        TheisSolution theis = new TheisSolution(transmissivity, transmissivity / diffusivity);
        return Superposition.of(bore.rates(), time, since -> theis.drawdown(1, distance, since));
    }
}

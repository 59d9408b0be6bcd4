package org.headfall.scenarios.siting;

import java.util.Optional;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.response.EffectFields;

/**
 * A limited place that itself gives less as head falls: a spring or a bore that flows freely. Effects are solved for with
 * its rule as a straight line, the tangent b at the end of the run. Where head falls by s, a rule with the chord c over that
 * fall takes {@code s / c - s / b} more from the discharge than the line does, which raises the head by its own response R,
 * the line counted, times as much. So a straight effect counts by {@code 1 / (1 + R (1 / c - 1 / b))}, 1 for a straight rule.
 *
 * <p>The difference is taken to have lasted as long as the taking. It errs by little, for it is small and changes slowly.
 */
final class GivingPlace {

    private static final int MOST_ROUNDS = 100;
    private static final double SETTLED = 1e-7;

    private final PointRules rules;
    private final int station;
    private final StationSeries series;
    private final double tangent;
    private final EffectFields fields;
    private final int receptor;
    private final double shortest;

    private GivingPlace(
            RunInMemory base, HeadDependence.Point point, EffectFields fields, int receptor, double shortest) {
        rules = new PointRules(base.plan().problem());
        station = point.index();
        series = base.recording().series().get(station);
        tangent = point.headPerDischarge();
        this.fields = fields;
        this.receptor = receptor;
        this.shortest = shortest;
    }

    /**
     * The place of a receptor.
     *
     * @param base the run without new bores
     * @param station its number
     * @param fields effects, with the tangents of the end of the run
     * @param receptor its number there
     * @param shortest shortest time for which effects are known (d)
     * @return the place; absent if its discharge does not follow head at the end of the run
     */
    static Optional<GivingPlace> of(RunInMemory base, int station, EffectFields fields, int receptor, double shortest) {
        return base.dependence().points().stream()
                .filter(point -> point.index() == station && point.headPerDischarge() > 0)
                .findFirst()
                .map(point -> new GivingPlace(base, point, fields, receptor, shortest));
    }

    /**
     * By what a tangent effect on head counts where head falls by so much.
     *
     * @param day the day (d)
     * @param fall fall of head by all new bores (m)
     * @return the factor (-)
     */
    double factor(double day, double fall) {
        double discharge = series.dischargeAt(day);
        double chord = fall > 0 && discharge > 0 ? rules.chordOver(day, station, discharge, fall) : Double.NaN;
        if (Double.isNaN(chord)) {
            return 1;
        }
        double own = fields.own(receptor, Math.max(day, shortest));
        return 1 / (1 + own * (1 / chord - 1 / tangent));
    }

    /**
     * Fall of head with the bend of the rule.
     *
     * @param day the day (d)
     * @param straight fall by the tangent (m)
     * @return the fall (m)
     */
    double fall(double day, double straight) {
        double fall = straight;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double next = straight * factor(day, fall);
            if (Math.abs(next - fall) <= SETTLED * Math.abs(next)) {
                return next;
            }
            fall = next;
        }
        return fall;
    }
}

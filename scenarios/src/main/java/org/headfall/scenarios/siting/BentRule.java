package org.headfall.scenarios.siting;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.response.EffectFields;

/**
 * A spring or a bore whose discharge follows head, and which effects count as if its rule were straight, with the slope at the
 * end of the run. What it loses beyond that ({@link Bend}) raises heads there and elsewhere.
 *
 * <p>The excess is taken to have lasted as long as the taking. It errs by little, for it is small and changes slowly.
 */
final class BentRule {

    /** Rise of head by all that a place discharges below which its rule does not matter (m). */
    private static final double MATTERS = 1e-4;

    /** Part of the time of taking for which the excess has lasted, as it comes on little by little. */
    private static final double AGE = 0.5;

    private final FlowProblem problem;
    private final PointRules rules;
    private final HeadDependence.Point point;
    private final StationSeries series;
    private final EffectFields fields;
    private final int receptor;
    private final double shortest;
    private final Map<Double, Bend> bends = new HashMap<>();

    /**
     * The rule of a place.
     *
     * @param base the run without new bores
     * @param point the place, with its slope
     * @param fields effects, among them those at the place
     * @param receptor its number there
     * @param shortest shortest time for which effects are known (d)
     */
    BentRule(RunInMemory base, HeadDependence.Point point, EffectFields fields, int receptor, double shortest) {
        problem = base.plan().problem();
        rules = new PointRules(problem);
        this.point = point;
        series = base.recording().series().get(point.index());
        this.fields = fields;
        this.receptor = receptor;
        this.shortest = shortest;
    }

    /**
     * The places whose rules matter at a station.
     *
     * @param base the run without new bores
     * @param station number of the station
     * @param days how long new bores take (d)
     */
    static List<HeadDependence.Point> thatMatter(RunInMemory base, int station, double days) {
        return base.dependence().points().stream()
                .filter(point -> point.headPerDischarge() > 0
                        && base.responses().at(station, point.index(), days) * largestDischarge(base, point.index())
                                > MATTERS)
                .toList();
    }

    private static double largestDischarge(RunInMemory base, int station) {
        double largest = 0;
        for (double discharge : base.recording().series().get(station).discharge()) {
            largest = Math.max(largest, discharge);
        }
        return largest;
    }

    int station() {
        return point.index();
    }

    /** Its number among the receptors of effects. */
    int receptor() {
        return receptor;
    }

    /** How its rule bends from what it discharges in the run on a day. */
    Bend on(double day) {
        return bends.computeIfAbsent(day, this::bend);
    }

    private Bend bend(double day) {
        double discharge = series.dischargeAt(day);
        if (!(discharge > 0) || Double.isNaN(rules.chordOver(day, point.index(), discharge, 1))) {
            return Bend.NONE;
        }
        return Bend.of(
                fall -> fall / rules.chordOver(day, point.index(), discharge, fall),
                point.headPerDischarge(),
                fields.own(receptor, Math.max(AGE * day, shortest)));
    }

    /**
     * Fall of head at a receptor by a unit discharge here, straight rules counted (d/m²).
     *
     * @param other number of the receptor
     * @param time how long it has lasted (d)
     */
    double at(int other, double time) {
        double lasted = Math.max(AGE * time, shortest);
        if (other == receptor) {
            return fields.own(receptor, lasted);
        }
        List<Bore> bores = problem.bores();
        if (point.index() < bores.size()) {
            Bore bore = bores.get(point.index());
            return fields.by(other, problem.nearField(bore.x(), bore.y(), bore.screenRadius()), lasted);
        }
        Spring spring = problem.springs().get(point.index() - bores.size());
        return fields.bySpring(other, problem.aquifer().grid().locate(spring.x(), spring.y()), lasted);
    }
}

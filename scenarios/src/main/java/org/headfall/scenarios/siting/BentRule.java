package org.headfall.scenarios.siting;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.EffectFields;

/**
 * A spring or a bore whose discharge follows head, and which effects count as if its rule were straight, with the slope at the
 * end of the run. What it loses beyond that ({@link Bend}) raises heads there and elsewhere.
 *
 * <p>The excess comes on little by little with the fall of head that makes it, so it is taken to have lasted half as long as the
 * taking. It errs by little, for it is small and changes slowly. What was found is kept; not for several threads.
 */
final class BentRule {

    /** Rise of head by all that a place discharges below which its rule does not matter (m). */
    private static final double MATTERS = 1e-4;

    /**
     * Part of the time of taking for which the excess counts as lasting (-). No source; fitted: with 1 falls of head since a date
     * were up to 2.8 % off the simulator, with this within 1 % or 1 mm ({@code BentRulesTest}).
     */
    private static final double AGE = 0.5;

    private final PointRules rules;
    private final HeadDependence.Point point;
    private final StationSeries series;
    private final EffectFields fields;
    private final int receptor;
    private final double shortest;
    private final DischargeHere discharge;
    private final Map<Double, Bend> bends = new HashMap<>();
    private final Map<Felt, Double> falls = new HashMap<>();

    /** Fall of head at a receptor after some time (d) by a unit discharge here. */
    private interface DischargeHere {
        double at(int receptor, double time);
    }

    /** A receptor, and for how long the place has discharged (d). */
    private record Felt(int receptor, double time) {}

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
        FlowProblem problem = base.plan().problem();
        rules = new PointRules(problem);
        this.point = point;
        series = base.recording().series().get(point.index());
        this.fields = fields;
        this.receptor = receptor;
        this.shortest = shortest;
        discharge = dischargeHere(problem, point.index(), fields);
    }

    private static DischargeHere dischargeHere(FlowProblem problem, int index, EffectFields fields) {
        List<Bore> bores = problem.bores();
        if (index < bores.size()) {
            Bore bore = bores.get(index);
            NearField field = problem.nearField(bore.x(), bore.y(), bore.screenRadius());
            return (other, time) -> fields.by(other, field, time);
        }
        Spring spring = problem.springs().get(index - bores.size());
        int cell = problem.aquifer().grid().locate(spring.x(), spring.y());
        return (other, time) -> fields.bySpring(other, cell, time);
    }

    /**
     * Numbers of the places whose rules matter at a station.
     *
     * @param base the run without new bores
     * @param station number of the station
     * @param days how long new bores take (d)
     */
    static Set<Integer> thatMatter(RunInMemory base, int station, double days) {
        return base.dependence().points().stream()
                .filter(point -> point.headPerDischarge() > 0
                        && base.responses().at(station, point.index(), days) * largestDischarge(base, point.index())
                                > MATTERS)
                .map(HeadDependence.Point::index)
                .collect(Collectors.toSet());
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
        double before = series.dischargeAt(day);
        if (!(before > 0) || Double.isNaN(rules.chordOver(day, point.index(), before, 1))) {
            return Bend.NONE;
        }
        return Bend.of(
                fall -> fall / rules.chordOver(day, point.index(), before, fall),
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
        return falls.computeIfAbsent(
                new Felt(other, lasted),
                felt -> other == receptor ? fields.own(receptor, lasted) : discharge.at(other, lasted));
    }
}

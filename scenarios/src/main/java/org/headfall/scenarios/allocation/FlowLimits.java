package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.Operation;

/** Limits on the flow of bores that are left to flow: of one whose rate is looked for, on that rate while it may take; of any other, on what it is offered. */
final class FlowLimits {

    private final RunPlan plan;
    private final RateVariables variables;
    private final RunInMemory without;

    /**
     * Limits on flow.
     *
     * @param plan the plan of the document
     * @param variables the rates of the bores that share
     * @param without the run without these bores
     */
    FlowLimits(RunPlan plan, RateVariables variables, RunInMemory without) {
        this.plan = plan;
        this.variables = variables;
        this.without = without;
    }

    /** What a limit on flow takes of rates: a requirement for each outlet or the like that the bore flows by at some time. */
    List<Requirement> of(Limit limit) {
        int station = plan.description().stationIndex(limit.station());
        double[] days = Arrays.stream(without.margins(limit).days())
                .filter(day -> day > 0)
                .toArray();
        OptionalInt sharing = IntStream.range(0, variables.bores())
                .filter(b -> variables.station(b) == station)
                .findFirst();
        if (sharing.isPresent()) {
            return List.of(onRate(limit, sharing.getAsInt(), days));
        }
        Map<LimitedFlow, List<Double>> daysOf = new LinkedHashMap<>();
        for (double day : days) {
            daysOf.computeIfAbsent(flow(limit, station, day), key -> new ArrayList<>())
                    .add(day);
        }
        return daysOf.entrySet().stream()
                .map(one -> new Requirement(
                        one.getKey(),
                        station,
                        variables.everyone(),
                        one.getValue().stream().mapToDouble(Double::doubleValue).toArray(),
                        one.getValue().stream()
                                .mapToDouble(day -> one.getKey().perMetre())
                                .toArray()))
                .toList();
    }

    /** Between blocks the bore rests whatever its rates, and no rate could keep its limit. */
    private Requirement onRate(Limit limit, int bore, double[] days) {
        int station = variables.station(bore);
        double[] taking = Arrays.stream(days)
                .filter(day -> variables.blocks().at(day) != null)
                .toArray();
        return new Requirement(
                new Requirement.OfRate(limit, bore, fallByUnit(limit, station)),
                station,
                variables.everyone(),
                taking,
                new double[taking.length]);
    }

    private LimitedFlow flow(Limit limit, int station, double day) {
        Bore bore = plan.problem().bores().get(station);
        Operation flowing = bore.operationAt(Math.nextDown(day));
        return new LimitedFlow(
                limit,
                new NeededHead(
                        flowing.neededLevel().orElseThrow(), plan.problem().lossIn(bore), bore.column()),
                response(station));
    }

    /** Fall of the level in a bore for a little more than the flow that its limit wants (m per L/s). */
    private double fallByUnit(Limit limit, int station) {
        double unit = DischargeUnit.LITRES_PER_SECOND.of(1);
        double least = limit.quantity().allowed() / unit;
        return (response(station)
                        + plan.problem()
                                .lossIn(plan.problem().bores().get(station))
                                .slope(least))
                / unit;
    }

    /** Fall of head at the wall of a bore by a unit of its own discharge (d/m²). */
    private double response(int station) {
        return without.responses().at(station, station, plan.description().endDay());
    }
}

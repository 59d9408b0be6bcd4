package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.Operation;

/** Limits on the flow of bores that are left to flow: of one whose rate is looked for, on that rate; of any other, on what it is offered. */
final class FlowLimits {

    private final RunPlan plan;
    private final int[] bores;
    private final RunInMemory without;

    /**
     * Limits on flow.
     *
     * @param plan the plan of the document
     * @param bores the bores that share, by their place in the run
     * @param without the run without these bores
     */
    FlowLimits(RunPlan plan, int[] bores, RunInMemory without) {
        this.plan = plan;
        this.bores = bores.clone();
        this.without = without;
    }

    /** What a limit on flow takes of rates: a requirement for each outlet or the like that the bore flows by at some time. */
    List<Requirement> of(Limit limit) {
        int station = plan.description().stationIndex(limit.station());
        double[] days = Arrays.stream(without.margins(limit).days())
                .filter(day -> day > 0)
                .toArray();
        int sharing = IntStream.range(0, bores.length)
                .filter(b -> bores[b] == station)
                .findFirst()
                .orElse(-1);
        BitSet all = new BitSet();
        all.set(0, bores.length);
        DrawdownByRates.Counted everyone = new DrawdownByRates.Counted(all, Optional.empty());
        if (sharing >= 0) {
            return List.of(new Requirement(
                    new Requirement.OfRate(limit, sharing), station, everyone, days, new double[days.length]));
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
                        everyone,
                        one.getValue().stream().mapToDouble(Double::doubleValue).toArray(),
                        one.getValue().stream()
                                .mapToDouble(day -> one.getKey().perMetre())
                                .toArray()))
                .toList();
    }

    private LimitedFlow flow(Limit limit, int station, double day) {
        Bore bore = plan.problem().bores().get(station);
        RunDescription run = plan.description();
        Operation flowing = bore.operationAt(Math.nextDown(day));
        double transmissivity = run.aquifer().effectiveTransmissivity(run.grid().locate(bore.x(), bore.y()));
        return new LimitedFlow(
                limit,
                new NeededHead(flowing.neededLevel().orElseThrow(), bore.lossIn(transmissivity), bore.column()),
                without.responses().at(station, station, run.endDay()));
    }
}

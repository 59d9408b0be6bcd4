package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.bore.Bore;

/** A plan with more bores on the same grid, after those that are there; off until the start. */
public final class MoreBores {

    private MoreBores() {}

    /**
     * The plan with more bores.
     *
     * @param plan the plan
     * @param bores the bores
     * @param sites their stations, in the same order
     * @return the plan
     */
    public static RunPlan in(RunPlan plan, List<Bore> bores, List<Station.BoreSite> sites) {
        RunDescription old = plan.description();
        List<Station> stations = new ArrayList<>(old.bores());
        stations.addAll(sites);
        stations.addAll(old.springs());
        stations.addAll(old.points());
        return new RunPlan(
                old.withStations(stations),
                plan.problem()
                        .withBores(Stream.concat(plan.problem().bores().stream(), bores.stream())
                                .toList()),
                plan.start(),
                plan.settings(),
                plan.stationDays(),
                plan.gridDays(),
                plan.limits(),
                false);
    }
}

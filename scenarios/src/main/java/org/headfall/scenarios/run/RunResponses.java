package org.headfall.scenarios.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.FieldResponses;
import org.headfall.solver.response.StationResponses;
import org.jspecify.annotations.Nullable;

/**
 * Responses of one run, or of several cases of one document, which have the same: computed when first asked for. Used by one
 * thread.
 */
final class RunResponses implements AutoCloseable {

    private final SolutionsBeside memory;
    private @Nullable StationResponses stations;
    private @Nullable FieldResponses fields;

    /**
     * Responses to be computed.
     *
     * @param folder where solutions that the heap has no room for are kept until this is closed
     */
    RunResponses(Path folder) {
        memory = new SolutionsBeside(folder);
    }

    /** Responses at bores, springs and points. */
    StationResponses stations(RunPlan plan) {
        StationResponses known = stations;
        if (known == null) {
            known = compute(plan);
            stations = known;
        }
        return known;
    }

    private static StationResponses compute(RunPlan plan) {
        List<ObservedHead> points =
                PointHeads.of(plan.description(), plan.problem().boundaries());
        Optional<double[]> given = plan.start().given();
        double horizon = RecoveryRuns.horizon(plan.description().endDay());
        return given.isPresent()
                ? StationResponses.fromGiven(
                        plan.problem(),
                        points,
                        given.get(),
                        horizon,
                        plan.settings().threads())
                : StationResponses.fromSteady(plan.problem(), points, horizon, plan.settings());
    }

    /** Responses of all cells, and with them those of bores, springs and points. */
    FieldResponses fields(RunPlan plan, StartState start) {
        FieldResponses known = fields;
        if (known == null) {
            known = compute(plan, start);
            fields = known;
            stations = known.stations();
        }
        return known;
    }

    private FieldResponses compute(RunPlan plan, StartState start) {
        List<ObservedHead> points =
                PointHeads.of(plan.description(), plan.problem().boundaries());
        double horizon = RecoveryRuns.horizon(plan.description().endDay());
        return plan.start().given().isPresent()
                ? FieldResponses.fromGiven(plan.problem(), points, start.heads(), horizon, memory, plan.settings())
                : FieldResponses.fromSteady(plan.problem(), points, start.heads(), horizon, memory, plan.settings());
    }

    @Override
    public void close() throws IOException {
        memory.close();
    }
}

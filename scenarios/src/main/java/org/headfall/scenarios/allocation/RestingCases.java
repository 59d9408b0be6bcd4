package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.response.StationResponses;

/** Other cases of the document that limits compare with and in which the bores that share rest: whatever their rates, these stay as they are. */
final class RestingCases {

    private RestingCases() {}

    /**
     * What stations do in these cases.
     *
     * @param plan the plan whose limits compare
     * @param cases the cases of the document
     * @param bores the bores that share, by their place in the run
     * @param days days wanted besides those of the plan (d)
     * @param responses what runs are superposed from, if that is known
     * @param progress is told how far this has come
     * @return series of the stations for each comparison
     */
    static Map<Comparison, List<StationSeries>> of(
            RunPlan plan,
            List<CasePlan> cases,
            int[] bores,
            double[] days,
            Optional<StationResponses> responses,
            RunProgress progress) {
        Map<Comparison, List<StationSeries>> found = new HashMap<>();
        double[] wanted = DoubleStream.concat(Arrays.stream(plan.stationDays()), Arrays.stream(days))
                .toArray();
        for (CasePlan one : cases) {
            Comparison comparison = new Comparison.WithCase(one.name());
            if (plan.limits().stream().map(Limit::comparison).anyMatch(comparison::equals) && rest(one.plan(), bores)) {
                progress.reached("running the case " + one.name(), 0);
                RunPlan recorded = one.plan().ofStations(one.plan().problem().bores(), wanted, List.of());
                found.put(
                        comparison,
                        responses
                                .flatMap(known -> RunInMemory.superposed(recorded, known))
                                .map(run -> run.recording().series())
                                .orElseGet(() -> RunInMemory.stations(recorded)));
            }
        }
        return found;
    }

    private static boolean rest(RunPlan plan, int[] bores) {
        return Arrays.stream(bores)
                .mapToObj(plan.problem().bores()::get)
                .flatMap(bore -> bore.phases().stream())
                .allMatch(phase -> phase.operation() instanceof Operation.Off);
    }
}

package org.headfall.scenarios.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.ResponsesFile;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.UnitResponses;

/**
 * Unit responses for a search for sites or rates: those of an earlier run on the same aquifer and grid, or computed anew.
 *
 * @param stored the responses of the earlier run, if they hold
 * @param withHeads whether its heads without bores hold as well
 * @param words where responses come from, for users; without a full stop
 */
public record PlanningResponses(Optional<StoredResponses> stored, boolean withHeads, String words) {

    private static final double ROUNDING = 1e-9;

    /**
     * Looks into the results of an earlier run.
     *
     * @param plan the plan whose responses are wanted
     * @param folder folder of results, which need not be there
     * @return its responses if they hold for the plan, otherwise why not
     */
    public static PlanningResponses of(RunPlan plan, Path folder) {
        if (!Files.isRegularFile(folder.resolve(ResponsesFile.NAME))) {
            return anew("a run of this scenario would keep them");
        }
        ResponseKey key = MatchedResponses.keyOf(plan);
        StoredResponses found;
        try {
            found = ResponsesReader.read(folder).stored();
        } catch (ResultsException e) {
            return anew(String.valueOf(e.getMessage()));
        }
        // Heads without bores, the second part of a key, are none of the responses' business.
        List<String> differences = key.aquiferDifferencesTo(found.key());
        if (!differences.isEmpty()) {
            return anew("those of " + folder + " do not hold, since this differs: " + String.join("; ", differences));
        }
        double end = plan.description().endDay();
        return found.horizon() < end * (1 - ROUNDING)
                ? anew("those of " + folder + " reach day " + Math.round(found.horizon()) + " only")
                : new PlanningResponses(
                        Optional.of(found),
                        key.differencesTo(found.key()).isEmpty(),
                        "those of " + folder + " (same aquifer and grid)");
    }

    private static PlanningResponses anew(String why) {
        return new PlanningResponses(Optional.empty(), false, "computed anew: " + why);
    }

    /**
     * The responses.
     *
     * @param plan the plan, or one that differs from it in what bores do alone
     * @param progress is told if they are computed
     * @return responses of its problem at all stations
     */
    public UnitResponses orComputed(RunPlan plan, RunProgress progress) {
        if (stored.isPresent()) {
            return stored.get().responses();
        }
        progress.reached("computing responses", 0);
        return UnitResponses.of(
                plan.problem(),
                PointHeads.of(plan.description(), plan.problem().boundaries()),
                plan.description().endDay(),
                plan.settings().threads());
    }

    /**
     * The responses with heads without bores, from which whole runs are superposed.
     *
     * @param plan the plan, or one that differs from it in what bores do alone
     * @param progress is told if they are computed
     * @return responses of its problem and heads without bores at all stations; absent if those of the earlier run hold, but
     *     not its heads
     */
    public Optional<StationResponses> withHeadsOrComputed(RunPlan plan, RunProgress progress) {
        if (stored.isPresent()) {
            return withHeads
                    ? Optional.of(
                            stored.get().forProblem(plan.problem(), plan.start().given()))
                    : Optional.empty();
        }
        progress.reached("computing responses", 0);
        return Optional.of(RunFromResponses.responsesOf(plan)
                .forProblem(plan.problem(), plan.start().given()));
    }
}

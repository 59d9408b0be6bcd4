package org.headfall.scenarios.run;

import java.util.List;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.solver.response.StationResponses;

/**
 * Unit responses that were found to hold for a run. They hold as well for every run that differs from it in what bores do
 * alone, without being looked at again.
 *
 * @param key what they hold for
 * @param responses the responses
 * @param horizon longest time for which they are known (d)
 */
public record MatchedResponses(ResponseKey key, StationResponses responses, double horizon) {

    /**
     * Looks whether responses hold for a run.
     *
     * @param plan the run
     * @param stored the responses
     * @return the same, for this run
     * @throws IllegalArgumentException if they do not hold for it; the message names all that differs
     */
    public static MatchedResponses of(RunPlan plan, StoredResponses stored) {
        ResponseKey key = keyOf(plan);
        List<String> differences = key.differencesTo(stored.key());
        if (!differences.isEmpty()) {
            throw new IllegalArgumentException(
                    "the unit responses do not hold for this run, which differs in: " + String.join("; ", differences));
        }
        return of(plan, key, stored);
    }

    /** Responses of an earlier run, if they hold for this one. */
    static MatchedResponses read(RunPlan plan, EarlierResponses earlier) throws ResultsException {
        ResponseKey key = keyOf(plan);
        return of(plan, key, earlier.read().matching(key));
    }

    private static MatchedResponses of(RunPlan plan, ResponseKey key, StoredResponses stored) {
        return new MatchedResponses(
                key, stored.forProblem(plan.problem(), plan.start().given()), stored.horizon());
    }

    /** What responses of a run depend on. */
    static ResponseKey keyOf(RunPlan plan) {
        return ResponseKey.of(plan.description(), plan.problem(), plan.start().given());
    }
}

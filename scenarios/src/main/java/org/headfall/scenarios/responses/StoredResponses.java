package org.headfall.scenarios.responses;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.UndisturbedHeads;
import org.headfall.solver.response.UnitResponses;

/**
 * Unit responses of a field and heads without any bore and spring, with the key that says what they hold for. Stations
 * are those of the run: bores, then springs, then protected points.
 *
 * @param key what they hold for
 * @param responses responses of every station to every bore and spring
 * @param headAtStart head of each station without any bore and spring at the start (m above datum)
 * @param rises rise of head at each station by a unit inflow of each changing source
 */
@SuppressWarnings("ArrayRecordComponent") // one number a station, handed on and never compared
public record StoredResponses(ResponseKey key, UnitResponses responses, double[] headAtStart, ResponseTable rises) {

    /**
     * What a run has computed.
     *
     * @param key key of the run
     * @param computed its responses
     * @return the same, to be stored
     */
    public static StoredResponses of(ResponseKey key, StationResponses computed) {
        return new StoredResponses(
                key,
                computed.responses(),
                computed.undisturbed().atStart(),
                computed.undisturbed().rises());
    }

    /** Longest time for which they are known (d). */
    public double horizon() {
        double[] times = responses.table().times();
        return times[times.length - 1];
    }

    /**
     * The responses for a problem.
     *
     * @param problem a problem with the same key
     * @param givenHeads head of each cell at the start, if it does not start from rest
     * @return the responses
     */
    public StationResponses forProblem(FlowProblem problem, Optional<double[]> givenHeads) {
        List<ChangingSource> sources = givenHeads
                .map(heads -> ChangingSources.afterGiven(problem, heads))
                .orElseGet(() -> ChangingSources.afterSteady(problem));
        return new StationResponses(responses, new UndisturbedHeads(headAtStart, sources, rises, horizon()));
    }
}

package org.headfall.scenarios.run;

import java.util.List;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.StationResponses;

/** What is found in a run, however it came about. */
final class RunFindings {

    private RunFindings() {}

    /**
     * All findings.
     *
     * @param description the run
     * @param problem its problem
     * @param recording what it recorded
     * @param split its drawdown by cause
     * @param responses responses of the problem
     * @param history what its bores and springs discharged
     * @param startRates what they discharged at the start (m³/d)
     * @param fromRest whether heads at the start are the steady ones of these discharges
     * @param recoveries how places recover after taking stops
     * @return the findings
     */
    static Findings of(
            RunDescription description,
            FlowProblem problem,
            Recording recording,
            InterferenceDrawdown split,
            StationResponses responses,
            RateHistory history,
            double[] startRates,
            boolean fromRest,
            Recoveries recoveries) {
        return besidesAttribution(description, problem, recording, split, recoveries)
                .withAttribution(AttributionTables.of(
                        description, problem, responses, history, startRates, fromRest, recording));
    }

    /**
     * All findings but what is put down to single bores, which takes longest.
     *
     * @param description the run
     * @param problem its problem
     * @param recording what it recorded
     * @param split its drawdown by cause
     * @param recoveries how places recover after taking stops
     * @return the findings
     */
    static Findings besidesAttribution(
            RunDescription description,
            FlowProblem problem,
            Recording recording,
            InterferenceDrawdown split,
            Recoveries recoveries) {
        return new Findings(
                new ArtesianHeadAnalysis(description, recording).ofAllStations(),
                new InterferenceAnalysis(description, recording, problem.bores()).tables(split),
                split.method(),
                List.of(),
                Confinement.of(description, recording),
                recoveries);
    }
}

package org.headfall.scenarios.results;

import java.util.List;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;

/**
 * All that a run leaves, in memory: what tables, maps and the report are made of.
 *
 * @param description what the run was about
 * @param recording what it recorded
 * @param findings loss of artesian head, interference, loss of confinement
 * @param limits outcome of each limit
 * @param figures how exact it is and what it took
 */
public record FinishedRun(
        RunDescription description,
        Recording recording,
        Findings findings,
        List<LimitResult> limits,
        RunFigures figures) {

    /** Copies the list. */
    public FinishedRun {
        limits = List.copyOf(limits);
    }

    /**
     * The same with other findings.
     *
     * @param others the findings
     * @return the run
     */
    public FinishedRun withFindings(Findings others) {
        return new FinishedRun(description, recording, others, limits, figures);
    }
}

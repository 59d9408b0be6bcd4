package org.headfall.scenarios.evidence;

import java.util.List;
import org.headfall.scenarios.results.FinishedRun;

/**
 * All evidence of a run.
 *
 * @param purpose what the run is for, in the words of its document; empty if it says nothing
 * @param notAnswered what it does not answer, one sentence each
 * @param assumptions what it takes for granted
 * @param doubts what makes its figures less sure
 * @param checklist what a reviewer looks for
 */
public record Evidence(
        String purpose,
        List<String> notAnswered,
        List<Assumption> assumptions,
        List<Doubt> doubts,
        List<CheckedItem> checklist) {

    /** Copies the lists. */
    public Evidence {
        notAnswered = List.copyOf(notAnswered);
        assumptions = List.copyOf(assumptions);
        doubts = List.copyOf(doubts);
        checklist = List.copyOf(checklist);
    }

    /**
     * Evidence of a run.
     *
     * @param run the run
     * @return what it shows
     */
    public static Evidence of(FinishedRun run) {
        return new Evidence(
                run.description().purpose(),
                NotAnswered.by(run),
                RunAssumptions.of(run),
                RunDoubts.of(run),
                ReviewChecklist.of(run));
    }
}

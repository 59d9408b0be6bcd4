package org.headfall.scenarios.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.results.FinishedRun;

/** What a run does not answer: what it was not asked, what it could not decide, and what no run of the program computes. */
final class NotAnswered {

    private NotAnswered() {}

    static List<String> by(FinishedRun run) {
        List<String> sentences = new ArrayList<>();
        if (run.limits().isEmpty()) {
            sentences.add("Whether any limit is kept: the scenario sets none.");
        }
        add(sentences, "Whether these limits are kept, which the run leaves undecided", run, Outcome.Undecided.class);
        add(sentences, "Whether these limits are kept, which the run could not judge", run, Outcome.NotEvaluated.class);
        sentences.add("How likely each answer is: a run is one best estimate. A sweep of runs with other values gives"
                + " probabilities (headfall sweep).");
        if (run.description().measurements().isEmpty()) {
            sentences.add("Whether heads today are as computed: no measured heads were given.");
        }
        sentences.add("What comes after "
                + run.description().calendar().at(run.description().endDay()).toLocalDate()
                + (run.findings().recovery().lines().isEmpty()
                        ? "."
                        : ", except how places recover if taking stops then."));
        sentences.addAll(run.findings().recovery().missing());
        sentences.add(
                "Quality of the water, movement of salt, gas and heat, and sinking of land over depressurised clay.");
        sentences.add("Whether casings and headworks, old and new, hold the pressure.");
        sentences.add("Flow between several aquifers, in fractures and caves, and where the aquifer is not full.");
        sentences.add("Whether anything may be taken: local law, the authority and licensed practice decide.");
        return sentences;
    }

    private static void add(List<String> sentences, String what, FinishedRun run, Class<? extends Outcome> outcome) {
        String names = run.limits().stream()
                .filter(result -> outcome.isInstance(result.outcome()))
                .map(NotAnswered::name)
                .collect(Collectors.joining("; "));
        if (!names.isEmpty()) {
            sentences.add(what + ": " + names + ".");
        }
    }

    private static String name(LimitResult result) {
        return result.limit().name() + " at " + result.limit().station();
    }
}

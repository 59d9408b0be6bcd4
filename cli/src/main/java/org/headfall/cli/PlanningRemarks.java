package org.headfall.cli;

import java.util.List;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.limits.UncountedLimit;

/** What is said below a plan of bores. */
final class PlanningRemarks {

    private PlanningRemarks() {}

    /** Names the limits that a search could not count; nothing if it counted all. */
    static void uncounted(TextBlock text, List<UncountedLimit> limits) {
        if (!limits.isEmpty()) {
            text.sentence("Not counted, so look at them in a run (headfall run):");
            limits.forEach(limit -> text.item(limit.sentence()));
        }
    }
}

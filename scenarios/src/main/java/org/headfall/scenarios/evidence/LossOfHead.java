package org.headfall.scenarios.evidence;

import org.headfall.scenarios.results.FinishedRun;

/**
 * The largest loss of head that a run computes, against which it is seen how much other changes of head weigh.
 *
 * @param largest largest loss since the start at any station (m), zero if nothing is lost
 */
record LossOfHead(double largest) {

    /** Share of the largest loss below which a change of head does not decide the answer (common practice, no source). */
    private static final double SMALL = 0.1;

    /** A change that is always small (m): no answer states less. */
    private static final double STATED = 0.001;

    static LossOfHead of(FinishedRun run) {
        return new LossOfHead(run.findings().artesianHead().stream()
                .flatMap(head -> head.extremes().stream())
                .mapToDouble(at -> at.loss())
                .filter(loss -> loss > 0)
                .max()
                .orElse(0));
    }

    /** A change of head (m) over the largest loss (-); infinite where nothing is lost but head changes. */
    double share(double metres) {
        return Math.abs(metres) <= STATED ? 0 : Math.abs(metres) / largest;
    }

    /** Whether a change of head (m) is small beside the largest loss. */
    boolean outweighs(double metres) {
        return share(metres) <= SMALL;
    }
}

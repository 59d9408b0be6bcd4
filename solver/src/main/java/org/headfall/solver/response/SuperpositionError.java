package org.headfall.solver.response;

import java.util.Arrays;

/**
 * What a superposed run is off by because it superposes, as it is found step by step: discharges that follow head are taken as
 * straight in each step, responses as sums of shared modes, and rules are met to a tolerance. What the responses
 * themselves are off by is not in it.
 */
final class SuperpositionError {

    private final SharedModes modes;
    private final double[] reference;
    private final double ruleTolerance;
    private final double[] mostMoved;
    private double largestStep;
    private boolean metRules;

    /**
     * Error of a run at its start.
     *
     * @param modes its responses as sums of modes
     * @param reference discharge of each cause of which only changes are superposed (m³/d)
     * @param ruleTolerance error of head by which rules may be missed (m)
     */
    SuperpositionError(SharedModes modes, double[] reference, double ruleTolerance) {
        this.modes = modes;
        this.reference = reference;
        this.ruleTolerance = ruleTolerance;
        mostMoved = new double[reference.length];
    }

    /** Another that has come as far and goes on by itself. */
    SuperpositionError copy() {
        SuperpositionError copy = new SuperpositionError(modes, reference, ruleTolerance);
        System.arraycopy(mostMoved, 0, copy.mostMoved, 0, mostMoved.length);
        copy.largestStep = largestStep;
        copy.metRules = metRules;
        return copy;
    }

    /** Rules were met, so that they may have been missed by their tolerance. */
    void meetRules() {
        metRules = true;
    }

    /**
     * Takes a step.
     *
     * @param error what taking discharges as straight makes heads err by (m)
     * @param discharge discharge of each cause at its end (m³/d)
     */
    void step(double error, double[] discharge) {
        largestStep = Math.max(largestStep, error);
        for (int i = 0; i < mostMoved.length; i++) {
            mostMoved[i] = Math.max(mostMoved[i], Math.abs(discharge[i] - reference[i]));
        }
    }

    /**
     * Error of head up to a day (m): as if every step had erred the same way by as much as the worst, and the misfits of all
     * causes went the same way.
     */
    double until(double day) {
        return largestStep + modes.error(day, mostMoved) + (metRules ? ruleTolerance : 0);
    }

    /** Error of head up to a day by modes alone, were all discharges moved by so much (m³/d) from the reference (m). */
    double ofModes(double day, double moved) {
        double[] all = new double[mostMoved.length];
        Arrays.fill(all, moved);
        return modes.error(day, all);
    }
}

package org.headfall.solver.response;

import java.util.Arrays;

/**
 * What a superposed run is off by because it superposes, as it is found step by step: discharges that follow head are taken as
 * straight in each step, responses as sums of shared modes, and rules are met to a tolerance. What the responses
 * themselves are off by stands apart ({@link #ofResponses}).
 */
final class SuperpositionError {

    /**
     * Error of a response as a share of the largest one to the same cause: the 0.01 mm for 1,000 m³/d within which responses
     * agree with simulations that are held tightly ({@code UnitResponsesTest}), over the 10 m that the bore lowers its own
     * head by there.
     */
    static final double SHARE_OF_RESPONSES = 1e-6;

    private final SharedModes modes;
    private final double[] largestEffect;
    private final double[] reference;
    private final double ruleTolerance;
    private final double[] mostMoved;
    private double largestStep;
    private boolean metRules;

    /**
     * Error of a run at its start.
     *
     * @param modes its responses as sums of modes
     * @param largestEffect largest effect of a unit discharge of each cause anywhere (d/m²); not changed
     * @param reference discharge of each cause of which only changes are superposed (m³/d)
     * @param ruleTolerance error of head by which rules may be missed (m)
     */
    SuperpositionError(SharedModes modes, double[] largestEffect, double[] reference, double ruleTolerance) {
        this.modes = modes;
        this.largestEffect = largestEffect;
        this.reference = reference;
        this.ruleTolerance = ruleTolerance;
        mostMoved = new double[reference.length];
    }

    /** Another that has come as far and goes on by itself. */
    SuperpositionError copy() {
        SuperpositionError copy = new SuperpositionError(modes, largestEffect, reference, ruleTolerance);
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

    /** Whether rules have been met. */
    boolean hasMetRules() {
        return metRules;
    }

    /** Error of head by what the responses themselves are off by, as if those of all causes went the same way (m). */
    double ofResponses() {
        return ofResponses(mostMoved);
    }

    /** The same, were all discharges moved by so much (m³/d) from the reference (m). */
    double ofResponses(double moved) {
        double[] all = new double[mostMoved.length];
        Arrays.fill(all, moved);
        return ofResponses(all);
    }

    private double ofResponses(double[] moved) {
        double sum = 0;
        for (int i = 0; i < moved.length; i++) {
            sum += SHARE_OF_RESPONSES * largestEffect[i] * moved[i];
        }
        return sum;
    }

    /** Error of head up to a day by modes alone, were all discharges moved by so much (m³/d) from the reference (m). */
    double ofModes(double day, double moved) {
        double[] all = new double[mostMoved.length];
        Arrays.fill(all, moved);
        return modes.error(day, all);
    }
}

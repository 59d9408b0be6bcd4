package org.headfall.solver.time;

/**
 * Chooses step lengths so that the error estimate of each step stays below a tolerance. Lengths are taken from a
 * ladder of powers of the square root of two, so that work that depends on the length can be kept and used again.
 *
 * @param tolerance largest error of an accepted step, in the unit of the unknowns
 * @param largest longest step (d); infinity for no bound
 * @param smallest shortest step (d): needing less is an error
 */
public record StepControl(double tolerance, double largest, double smallest) {

    private static final double SAFETY = 0.9;
    private static final double LARGEST_GROWTH = 8;
    private static final double SMALLEST_SHRINK = 0.1;
    private static final double RUNG = Math.sqrt(2);

    /** A step may be longer than wanted by this much to meet the end: its error stays within the safety. */
    private static final double NEARLY_ALL = 0.9;

    /** Whether a step with this error estimate may stand. */
    boolean accepts(double error) {
        return error <= tolerance;
    }

    /** Length to try after an accepted step; the estimate grows with the third power of the length. */
    double next(double length, double error) {
        double factor = error > 0 ? SAFETY * Math.cbrt(tolerance / error) : LARGEST_GROWTH;
        return bounded(length * Math.min(LARGEST_GROWTH, factor));
    }

    /** Length to try in place of a rejected step: at least one rung below it. */
    double shorter(double length, double error) {
        double factor = Math.max(SMALLEST_SHRINK, SAFETY * Math.cbrt(tolerance / error));
        return Math.pow(RUNG, Math.ceil(Math.log(length * factor) / Math.log(RUNG)) - 1);
    }

    /** The longest rung of the ladder that is shorter than a length. */
    double justBelow(double length) {
        return Math.pow(RUNG, Math.ceil(Math.log(length) / Math.log(RUNG) - 1e-9) - 1);
    }

    /** The rung of the ladder nearest to a length, within the longest step. */
    double bounded(double length) {
        double rung = Math.pow(RUNG, Math.rint(Math.log(length) / Math.log(RUNG)));
        return Math.min(rung, largest);
    }

    /**
     * Length of the step to take so that the end of the stretch is met exactly and no sliver is left before it.
     *
     * @param wanted length by accuracy (d)
     * @param remaining time to the end (d)
     * @return {@code remaining}, half of it, or {@code wanted}
     */
    double landing(double wanted, double remaining) {
        if (wanted >= NEARLY_ALL * remaining) {
            return remaining;
        }
        return 2 * wanted > remaining ? 0.5 * remaining : wanted;
    }
}

package org.headfall.validation.simulator;

import org.headfall.validation.check.Tolerance;

/** How near to a closed form the simulator has to be. */
final class Bars {

    private static final double SHARE = 0.005;
    private static final double MILLIMETRE = 0.001;

    /**
     * Largest value over u of {@code 4 |int_0^u (0.071 - 0.196 v + c v²/12) exp(-v) dv|}, c from 1/2 (diagonal) to 1 (axis):
     * what the five-point operator, by {@code (h²/12)(d⁴s/dx⁴ + d⁴s/dy⁴)} to leading order, and the second moment 13/120
     * h² of the weights of a bore make of the drawdown of Theis at a distance of r cells, times {@code r² 4 pi T/Q}.
     */
    private static final double LIMIT_OF_GRID = 0.17;

    private static final String OF_GRID =
            "limit of a five-point grid while the wave is short: 0.17 (cell/r)² Q/(4 pi T)";

    private Bars() {}

    /** From two cells away from a bore outward. */
    static Tolerance away(double drawdown) {
        return new Tolerance(
                Math.max(SHARE * Math.abs(drawdown), MILLIMETRE),
                "project's bar from two cells outward: 0.5 % of drawdown or 1 mm, whichever is larger");
    }

    /**
     * From two cells away outward, while the wave that began with a jump of a rate is still short beside the cells.
     *
     * @param drawdown drawdown (m)
     * @param scale Q/(4 pi T) (m)
     * @param cells distance from the bore in cells
     */
    static Tolerance ofGrid(double drawdown, double scale, double cells) {
        Tolerance later = away(drawdown);
        double limit = LIMIT_OF_GRID * scale / (cells * cells);
        return limit > later.allowed() ? new Tolerance(limit, OF_GRID) : later;
    }

    /** Whether a tolerance is the limit of the grid. */
    static boolean isOfGrid(Tolerance tolerance) {
        return tolerance.reason().equals(OF_GRID);
    }

    /**
     * At the wall of a bore.
     *
     * @param drawdown drawdown there (m); where its rate has jumped, the drawdown or rise of each jump, added up as positive
     */
    static Tolerance atBore(double drawdown) {
        return new Tolerance(
                Math.max(SHARE * Math.abs(drawdown), MILLIMETRE),
                "project's bar at the bore: 0.5 % of the drawdown by each jump of its rate, not below the 1 mm a step may"
                        + " err by");
    }

    /** Discharge of a bore. */
    static Tolerance discharge(double rate) {
        return Tolerance.share(SHARE, rate, "project's bar at the bore: 0.5 %");
    }

    /** What is read off drawdowns that are each within their bar. */
    static Tolerance derived(double allowed, String how) {
        return new Tolerance(allowed, "what 0.5 % of drawdown can change: " + how);
    }
}

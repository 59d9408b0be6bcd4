package org.headfall.validation.simulator;

import org.headfall.validation.check.Tolerance;

/** How near to a closed form the simulator has to be. */
final class Bars {

    private static final double AWAY = 0.005;
    private static final double AT_BORE = 0.01;
    private static final double MILLIMETRE = 0.001;

    private Bars() {}

    /** From two cells away from a bore outward. */
    static Tolerance away(double drawdown) {
        return new Tolerance(
                Math.max(AWAY * Math.abs(drawdown), MILLIMETRE),
                "project's bar from two cells outward: 0.5 % of drawdown or 1 mm, whichever is larger");
    }

    /** At the wall of a bore. */
    static Tolerance atBore(double drawdown) {
        return new Tolerance(
                Math.max(AT_BORE * Math.abs(drawdown), MILLIMETRE),
                "project's bar at the bore: 1 % of drawdown, not below the 1 mm a step may err by");
    }

    /** Discharge of a bore. */
    static Tolerance discharge(double rate) {
        return Tolerance.share(AT_BORE, rate, "project's bar at the bore: 1 %");
    }

    /** What is read off drawdowns that are each within their bar. */
    static Tolerance derived(double allowed, String how) {
        return new Tolerance(allowed, "what 0.5 % of drawdown can change: " + how);
    }
}

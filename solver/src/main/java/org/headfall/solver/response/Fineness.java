package org.headfall.solver.response;

/**
 * How finely a problem is solved in Laplace space. The numbers belong together: what looser solves leave would pass for
 * directions of the space, and closer shifts are of no use where the directions that they add are dropped.
 *
 * @param shiftsPerDecade shifts a decade
 * @param tolerance residual of a solve as a share of its source
 * @param smallestDirection share below which directions of the space are rounding and what the linear solver leaves
 * @param smallestDirectionOfField the same where whole fields are wanted, which miss directions more than responses of
 *     second order do
 */
record Fineness(int shiftsPerDecade, double tolerance, double smallestDirection, double smallestDirectionOfField) {

    /** For responses at stations, and for fields to a few millimetres. */
    static final Fineness USUAL = new Fineness(3, 1e-10, 1e-11, 1e-12);

    /** For fields to a millimetre, at twice the cost. */
    private static final Fineness FINE = new Fineness(6, 1e-12, 1e-13, 1e-14);

    /** Head tolerance below which fields are wanted to a millimetre (m). */
    private static final double FINE_TOLERANCE = 0.005;

    /** Fineness of fields whose heads may err by so much (m). */
    static Fineness ofFields(double headTolerance) {
        return headTolerance < FINE_TOLERANCE ? FINE : USUAL;
    }
}

package org.headfall.solver.response;

/**
 * How finely a problem is solved in Laplace space. The numbers belong together: what looser solves leave would pass for
 * directions of the space, and closer shifts are of no use where the directions that they add are dropped.
 *
 * @param shiftsPerDecade shifts a decade
 * @param tolerance residual of a solve as a share of its source
 * @param smallestDirection share below which directions of the space of one source are rounding and what the linear solver
 *     leaves
 * @param smallestOfFields the same of the square of a solution in the space of many sources, from which whole fields are made
 * @param smallestOfPoorer the same in a poorer space, by which the error of fields is told
 * @param solutionsOfModel solutions of a joint model of many sources at most, on average; the time to find its modes grows
 *     with their third power
 */
record Fineness(
        int shiftsPerDecade,
        double tolerance,
        double smallestDirection,
        double smallestOfFields,
        double smallestOfPoorer,
        int solutionsOfModel) {

    /** For responses at stations, and for fields to a few millimetres. */
    static final Fineness USUAL = new Fineness(3, 1e-10, 1e-11, 2e-10, 6e-9, 600);

    /**
     * For fields to less than a millimetre, in 60 % more iterations. Closer shifts need it all: with the directions dropped that
     * looser solves would hide, or with the sources parted among several models, they gain little.
     */
    private static final Fineness FINE = new Fineness(4, 1e-13, 1e-13, 3e-13, 5e-12, 900);

    /** Head tolerance below which fields are wanted to less than a millimetre (m). */
    private static final double FINE_TOLERANCE = 0.005;

    /** Fineness of fields whose heads may err by so much (m). */
    static Fineness ofFields(double headTolerance) {
        return headTolerance < FINE_TOLERANCE ? FINE : USUAL;
    }
}

package org.headfall.solver.analytic.side;

import org.headfall.solver.analytic.UnboundedSolution;
import org.headfall.solver.wording.PlainNumber;

/** Checks shared by the solutions that mirror bores in straight sides. */
final class ImagePlacement {
    private ImagePlacement() {}

    static UnboundedSolution mirrorSymmetric(UnboundedSolution unbounded) {
        if (unbounded.mirrorSymmetric()) {
            return unbounded;
        }
        throw new IllegalArgumentException(
                "images need an aquifer whose principal axes run along the sides, found " + unbounded);
    }

    static double inside(String name, double coordinate, double width) {
        if (coordinate >= 0 && coordinate <= width) {
            return coordinate;
        }
        throw new IllegalArgumentException(name + " must lie in the aquifer, from 0 to " + PlainNumber.of(width)
                + " m, found " + PlainNumber.of(coordinate) + " m");
    }
}

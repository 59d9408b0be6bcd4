package org.headfall.solver.flow;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What aquifer and sealing bed release within an implicit stage, for the coefficients used last. It is all that the length
 * of a step changes in the matrix: its diagonal.
 */
final class StageReleases {

    private static final long BYTES_KEPT = 48L << 20;

    private final double[] ties;
    private final double[] storage;
    private final @Nullable BedRelaxation bed;
    private final CellLoops loops;
    private final int most;
    /** Releases by coefficient, the one used longest ago first. */
    private final Map<Double, Release> kept = new LinkedHashMap<>(16, 0.75f, true);

    /**
     * Release within a stage.
     *
     * @param coefficient weight of the stage's own rate (d); infinite for the steady state, in which nothing is released
     * @param perMetre what each cell releases per time and metre of fall (m²/d)
     * @param tie what storage, leakage and boundaries give in all per metre of fall (m²/d)
     * @param usualTie norm of a residual that leaves an error of one metre where all cells err alike (m²/d): by the
     *     harmonic mean, which heeds small cells. Uneven errors of the same size leave larger residuals
     * @param takers cells that take what rounding leaves over, by what they give per metre of fall
     */
    @SuppressWarnings("ArrayRecordComponent") // read in every step, never compared
    record Release(double coefficient, double[] perMetre, double tie, double usualTie, LeftoverCells takers) {}

    /**
     * Releases of a matrix.
     *
     * @param ties conductance of each cell to given heads (m²/d)
     * @param storage water released by each cell at once per metre of fall (m²)
     * @param bed relaxation of the sealing bed, null if there is none
     * @param loops runs the loops over all cells
     * @param comeBack whether coefficients come back, so that it pays to keep their releases
     */
    StageReleases(double[] ties, double[] storage, @Nullable BedRelaxation bed, CellLoops loops, boolean comeBack) {
        this.ties = ties;
        this.storage = storage;
        this.bed = bed;
        this.loops = loops;
        most = comeBack ? (int) Math.max(4, BYTES_KEPT / Double.BYTES / storage.length) : 1;
    }

    /** Release for a coefficient (d). */
    Release of(double coefficient) {
        Release known = kept.get(coefficient);
        if (known != null) {
            return known;
        }
        double[] array = kept.size() < most ? new double[storage.length] : takeEldest();
        Release made = make(coefficient, array);
        kept.put(coefficient, made);
        return made;
    }

    private double[] takeEldest() {
        var byAge = kept.values().iterator();
        Release eldest = byAge.next();
        byAge.remove();
        return eldest.perMetre();
    }

    private Release make(double coefficient, double[] perMetre) {
        double perDay = 1 / coefficient;
        loops.run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                perMetre[cell] = perDay * storage[cell];
            }
            if (bed != null && perDay > 0) {
                bed.addToDiagonal(coefficient, perMetre, from, to);
            }
        });
        double tie = 0;
        double inverse = 0;
        int tied = 0;
        for (int cell = 0; cell < perMetre.length; cell++) {
            double own = ties[cell] + perMetre[cell];
            if (own > 0) {
                tie += own;
                inverse += 1 / own;
                tied++;
            }
        }
        double usualTie = tied == 0 ? 0 : tied / inverse * Math.sqrt(tied);
        LeftoverCells takers = LeftoverCells.of(perMetre.length, cell -> ties[cell] + perMetre[cell]);
        return new Release(coefficient, perMetre, tie, usualTie, takers);
    }
}

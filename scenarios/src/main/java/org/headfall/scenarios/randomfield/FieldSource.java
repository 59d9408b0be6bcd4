package org.headfall.scenarios.randomfield;

import java.util.Optional;
import org.headfall.scenarios.raster.Raster;

/** Draws fields on a lattice that everything which does not change from one to the next has been prepared for. */
public final class FieldSource {

    private final Lattice lattice;
    private final double median;
    private final CirculantEmbedding embedding;
    private final Optional<KeptValues> kept;

    FieldSource(Lattice lattice, double median, CirculantEmbedding embedding, Optional<KeptValues> kept) {
        this.lattice = lattice;
        this.median = median;
        this.embedding = embedding;
        this.kept = kept;
    }

    /**
     * Draws a field.
     *
     * @param seed decides the fields
     * @param number which of them
     * @return the field on the cells of the lattice
     * @throws IllegalArgumentException if known values stand so close together that they cannot all be kept
     */
    public Raster draw(long seed, int number) {
        double[] field = embedding.draw(RandomNumbers.of(seed, number));
        kept.ifPresent(values -> values.impose(field));
        double mean = Math.log(median);
        for (int cell = 0; cell < field.length; cell++) {
            field[cell] = Math.exp(mean + field[cell]);
        }
        return lattice.raster(field);
    }
}

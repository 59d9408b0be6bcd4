package org.headfall.validation.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Where in its cell a bore stands.
 *
 * @param x share of the cell's width, 0 to 1
 * @param y share of its height, 0 to 1
 */
record Placement(double x, double y) {

    /** The seed of the random places. */
    static final long SEED = 20261125;

    static final Placement CENTRE = new Placement(0.5, 0.5);

    /** Places anywhere in the cell, one in each quarter, so that few tell about all. */
    static List<Placement> anywhere() {
        Random random = new Random(SEED);
        List<Placement> places = new ArrayList<>();
        for (double south : new double[] {0, 0.5}) {
            for (double west : new double[] {0, 0.5}) {
                places.add(new Placement(west + 0.5 * random.nextDouble(), south + 0.5 * random.nextDouble()));
            }
        }
        return places;
    }

    @Override
    public String toString() {
        return equals(CENTRE) ? "centre" : String.format(Locale.ROOT, "place (%.2f, %.2f)", x, y);
    }
}

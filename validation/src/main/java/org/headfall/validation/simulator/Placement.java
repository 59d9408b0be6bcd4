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
        for (int quarter = 0; quarter < 4; quarter++) {
            places.add(new Placement(
                    0.5 * (quarter % 2 + random.nextDouble()), 0.5 * (quarter / 2 + random.nextDouble())));
        }
        return places;
    }

    @Override
    public String toString() {
        return equals(CENTRE) ? "centre" : String.format(Locale.ROOT, "place (%.2f, %.2f)", x, y);
    }
}

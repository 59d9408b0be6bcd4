package org.headfall.scenarios.spatial;

import org.jspecify.annotations.Nullable;

/**
 * A point on the ground. What makes two of them equal is written out, since Java takes long to build that of a record.
 *
 * @param x easting (m)
 * @param y northing (m)
 */
public record Position(double x, double y) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Position position
                && Double.compare(x, position.x) == 0
                && Double.compare(y, position.y) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(x) + Double.hashCode(y);
    }
}

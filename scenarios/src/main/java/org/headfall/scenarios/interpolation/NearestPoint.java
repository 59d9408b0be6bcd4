package org.headfall.scenarios.interpolation;

/** The value of the nearest point; of the earlier of two that are equally near. */
record NearestPoint(ScatteredValues points) implements Surface {
    @Override
    public double at(double x, double y) {
        double nearest = Double.POSITIVE_INFINITY;
        double value = 0;
        for (int i = 0; i < points.count(); i++) {
            double dx = x - points.x(i);
            double dy = y - points.y(i);
            double square = dx * dx + dy * dy;
            if (square < nearest) {
                nearest = square;
                value = points.value(i);
            }
        }
        return value;
    }
}

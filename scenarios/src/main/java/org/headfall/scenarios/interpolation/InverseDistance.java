package org.headfall.scenarios.interpolation;

/**
 * The mean of the values of all points, weighted by the inverse square of the distance (D. Shepard 1968, A
 * two-dimensional interpolation function for irregularly-spaced data, Proc. 23rd ACM National Conference, 517-524); at a
 * point its own value.
 */
record InverseDistance(ScatteredValues points) implements Surface {
    @Override
    public double at(double x, double y) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < points.count(); i++) {
            double dx = x - points.x(i);
            double dy = y - points.y(i);
            double square = dx * dx + dy * dy;
            if (square == 0) {
                return points.value(i);
            }
            sum += points.value(i) / square;
            weights += 1 / square;
        }
        return sum / weights;
    }
}

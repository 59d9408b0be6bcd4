package org.headfall.scenarios.interpolation;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Spreads values at points over cells. Values beyond the outermost points are extrapolated. */
public final class PointSpread {
    private static final int LEAST_POINTS_TO_KRIGE = 3;

    private final CellCentres cells;
    private final int threads;

    /**
     * A spread over cells.
     *
     * @param cells the centres of the cells
     * @param threads threads to compute with
     */
    public PointSpread(CellCentres cells, int threads) {
        this.cells = cells;
        this.threads = threads;
    }

    /**
     * Gives each cell the value of the nearest point.
     *
     * @param points the points
     */
    public SpreadValues nearest(ScatteredValues points) {
        return new SpreadValues(cells.values(new NearestPoint(points), threads), new SpreadValues.Nearest());
    }

    /**
     * Gives each cell the mean weighted by the inverse square of the distance.
     *
     * @param points the points
     * @param scale whether values or logarithms are averaged
     * @throws IllegalArgumentException if the logarithm of a value that is not positive is asked for
     */
    public SpreadValues inverseDistance(ScatteredValues points, ValueScale scale) {
        return inverseDistance(points, scale, false);
    }

    private SpreadValues inverseDistance(ScatteredValues points, ValueScale scale, boolean tooFewPoints) {
        ScatteredValues scaled = points.map(scale::forward);
        if (points.allEqual()) {
            return sameEverywhere(points);
        }
        return new SpreadValues(
                values(new InverseDistance(scaled), scale),
                new SpreadValues.InverseDistanceSquared(scale, tooFewPoints));
    }

    /**
     * Gives each cell the value of ordinary kriging with an exponential variogram; with fewer than three points, the mean
     * by inverse distances.
     *
     * @param points the points
     * @param scale whether values or logarithms are kriged
     * @param range range of the variogram (m); fitted if empty
     * @param nuggetShare share of the nugget in the sill, from 0 to less than 1
     * @throws IllegalArgumentException if a parameter is out of range, if the logarithm of a value that is not positive
     *     is asked for, or if points stand too close together
     */
    public SpreadValues kriging(ScatteredValues points, ValueScale scale, OptionalDouble range, double nuggetShare) {
        ScatteredValues scaled = points.map(scale::forward);
        if (points.allEqual()) {
            return sameEverywhere(points);
        }
        if (points.count() < LEAST_POINTS_TO_KRIGE) {
            return inverseDistance(points, scale, true);
        }
        ExponentialVariogram variogram = range.isPresent()
                ? VariogramFit.withRange(scaled, range.getAsDouble(), nuggetShare)
                : VariogramFit.of(scaled, nuggetShare);
        return new SpreadValues(
                values(new OrdinaryKriging(scaled, variogram), scale),
                new SpreadValues.Kriging(scale, variogram, range.isEmpty()));
    }

    private SpreadValues sameEverywhere(ScatteredValues points) {
        double[] values = new double[cells.count()];
        Arrays.fill(values, points.value(0));
        return new SpreadValues(values, new SpreadValues.SameEverywhere());
    }

    private double[] values(Surface surface, ValueScale scale) {
        return cells.values((x, y) -> scale.back(surface.at(x, y)), threads);
    }
}

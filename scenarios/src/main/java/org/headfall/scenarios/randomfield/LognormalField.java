package org.headfall.scenarios.randomfield;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A field whose natural logarithm is normal, with the same median and spread everywhere, that may have to keep values
 * which are known at places: a field without regard to them is drawn, and what it misses there is spread over its
 * surroundings by simple kriging (Chilès and Delfiner 2012, section 7.3.1). The result has the distribution that the
 * model has once the values are known.
 *
 * <p>A known value counts for the whole cell of the lattice it lies in, which has it to rounding; of several in one cell the
 * geometric mean does. Values beyond the area count where they are within the range of it.
 *
 * @param median median of the values, positive
 * @param covariance covariance of the natural logarithms
 * @param known values to keep
 */
public record LognormalField(double median, Covariance covariance, List<KnownValue> known) {

    /** Copies the list. */
    public LognormalField {
        known = List.copyOf(known);
        if (!(median > 0)) {
            throw new IllegalArgumentException("the median of a lognormal field is positive, found " + median);
        }
    }

    /**
     * Prepares fields.
     *
     * @param area the lattice they have to cover; rasters reach farther where known values near it do
     * @return draws fields
     * @throws IllegalArgumentException if the range is too long for the area, or known values stand so close together
     *     that they cannot all be kept
     */
    public FieldSource on(Lattice area) {
        List<KnownValue> near =
                known.stream().filter(value -> isNear(area, value)).toList();
        Lattice lattice = area;
        for (KnownValue value : near) {
            lattice = lattice.with(value.x(), value.y());
        }
        CirculantEmbedding embedding = CirculantEmbedding.of(lattice, covariance);
        return new FieldSource(
                lattice,
                median,
                embedding,
                near.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new KeptValues(meansOfCells(lattice, near), lattice, covariance)));
    }

    private boolean isNear(Lattice area, KnownValue value) {
        double east = Math.max(area.west() - value.x(), value.x() - area.west() - area.columns() * area.width());
        double north = Math.max(area.south() - value.y(), value.y() - area.south() - area.rows() * area.height());
        return east < covariance.reachEast() && north < covariance.reachNorth();
    }

    /** Logarithm less its mean in each cell that has known values. */
    private Map<Integer, Double> meansOfCells(Lattice lattice, List<KnownValue> near) {
        Map<Integer, List<Double>> byCell = new LinkedHashMap<>();
        for (KnownValue value : near) {
            int cell = lattice.row(value.y()) * lattice.columns() + lattice.column(value.x());
            byCell.computeIfAbsent(cell, empty -> new ArrayList<>()).add(Math.log(value.value() / median));
        }
        Map<Integer, Double> means = new LinkedHashMap<>();
        byCell.forEach((cell, values) -> means.put(
                cell, values.stream().mapToDouble(Double::doubleValue).average().orElseThrow()));
        return means;
    }
}

package org.headfall.scenarios.vector;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Whether features lie where an area lies, or seem to be in degrees or to have easting and northing swapped. */
public final class PlacementCheck {
    private final Extent area;
    private final Envelope envelope;

    /**
     * A check against one area.
     *
     * @param area the area that the features should reach into (m)
     */
    public PlacementCheck(Extent area) {
        this.area = area;
        this.envelope = new Envelope(area.west(), area.east(), area.south(), area.north());
    }

    /**
     * What is wrong with the place of the features of a file. Single features beyond the area are no fault; that none
     * reaches into it is one.
     *
     * @param file the features
     * @return the fault with the place of the first feature that has it; empty if there is none
     */
    public Optional<SpatialFormatException> fault(FeatureFile file) {
        String allowed = "coordinates in metres, easting first, that reach into " + area;
        List<Feature> degrees =
                file.features().stream().filter(this::isInDegrees).toList();
        if (!degrees.isEmpty()) {
            return fault(file, degrees, " in degrees", allowed);
        }
        List<Feature> swapped = file.features().stream().filter(this::isSwapped).toList();
        if (!swapped.isEmpty()) {
            return fault(file, swapped, " with easting and northing swapped", allowed);
        }
        boolean none = file.features().stream().noneMatch(feature -> reachesInto(bounds(feature)));
        return none ? fault(file, file.features(), " outside the grid", allowed) : Optional.empty();
    }

    private static Optional<SpatialFormatException> fault(
            FeatureFile file, List<Feature> concerned, String what, String allowed) {
        if (concerned.isEmpty()) {
            return Optional.empty();
        }
        Feature first = concerned.get(0);
        Coordinate sample = first.geometry().getCoordinate();
        String found = concerned.size() + " of " + file.features().size() + " features" + what + ", the first at "
                + CoordinateWords.of(sample.x, sample.y);
        return Optional.of(SpatialFormatException.at(
                file.file(), first.position().line(), first.position().column(), found, allowed));
    }

    private static Envelope bounds(Feature feature) {
        return feature.geometry().getEnvelopeInternal();
    }

    private boolean reachesInto(Envelope bounds) {
        return envelope.intersects(bounds);
    }

    /** The rule of {@link Extent#fitsLongitudeLatitude}, for shapes that may be points. */
    private boolean isInDegrees(Feature feature) {
        Envelope bounds = bounds(feature);
        return !area.fitsLongitudeLatitude()
                && !reachesInto(bounds)
                && bounds.getMinX() >= -180
                && bounds.getMaxX() <= 360
                && bounds.getMinY() >= -180
                && bounds.getMaxY() <= 360;
    }

    private boolean isSwapped(Feature feature) {
        Envelope bounds = bounds(feature);
        Envelope turned = new Envelope(bounds.getMinY(), bounds.getMaxY(), bounds.getMinX(), bounds.getMaxX());
        return !reachesInto(bounds) && reachesInto(turned);
    }
}

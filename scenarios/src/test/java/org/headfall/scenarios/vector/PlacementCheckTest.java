package org.headfall.scenarios.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class PlacementCheckTest {
    private final PlacementCheck check = new PlacementCheck(new Extent(300_000, 6_500_000, 380_000, 6_560_000));

    private static FeatureFile points(double... xy) {
        List<Feature> features = Arrays.stream(new int[xy.length / 2])
                .mapToObj(i -> Feature.of(new GeometryFactory().createPoint(new Coordinate(0, 0)), Map.of()))
                .toList();
        for (int i = 0; i < features.size(); i++) {
            Coordinate place = features.get(i).geometry().getCoordinate();
            place.setX(xy[2 * i]);
            place.setY(xy[2 * i + 1]);
            features.get(i).geometry().geometryChanged();
        }
        return new FeatureFile(Path.of("map.geojson"), features, Optional.empty());
    }

    private String found(FeatureFile file) {
        return check.fault(file).map(SpatialFormatException::found).orElse("nothing");
    }

    @Test
    void featuresWithinOrPartlyBeyondTheAreaAreNoFault() {
        assertEquals("nothing", found(points(350_000, 6_530_000, 100_000, 6_530_000)));
    }

    @Test
    void degreesAreNoticedInEitherOrder() {
        assertTrue(found(points(133.5, -26.1)).startsWith("1 of 1 features in degrees"));
        assertTrue(found(points(350_000, 6_530_000, -26.1, 133.5))
                .startsWith("1 of 2 features in degrees, the first at x -26.1, y 133.5"));
    }

    @Test
    void swappedCoordinatesAreNoticed() {
        assertEquals(
                "1 of 1 features with easting and northing swapped, the first at x 6530000, y 350000",
                found(points(6_530_000, 350_000)));
    }

    @Test
    void aFileOfWhichNothingReachesTheAreaIsAFault() {
        assertTrue(found(points(100_000, 6_530_000)).startsWith("1 of 1 features outside the grid"));
    }

    @Test
    void anAreaThatCouldItselfBeDegreesTellsNothing() {
        PlacementCheck small = new PlacementCheck(new Extent(0, 0, 80, 60));
        assertEquals(Optional.empty(), small.fault(points(60, 30)));
    }
}

package org.headfall.scenarios.vector;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Whether a shape is a proper one in the sense of the OGC simple features: outlines that do not cross, and so on. */
final class ShapeCheck {
    private ShapeCheck() {}

    /** What is wrong with a shape, in words with the coordinates of the place. */
    static Optional<String> fault(Geometry shape) {
        @Nullable TopologyValidationError error = new IsValidOp(shape).getValidationError();
        return error == null ? Optional.empty() : Optional.of(words(error));
    }

    private static String words(TopologyValidationError error) {
        @Nullable Coordinate place = error.getCoordinate();
        return kind(error.getErrorType()) + (place == null ? "" : " at " + CoordinateWords.of(place.x, place.y));
    }

    private static String kind(int error) {
        return switch (error) {
            case TopologyValidationError.SELF_INTERSECTION -> "outlines that cross";
            case TopologyValidationError.RING_SELF_INTERSECTION -> "an outline that touches itself";
            case TopologyValidationError.HOLE_OUTSIDE_SHELL -> "a hole outside its polygon";
            case TopologyValidationError.NESTED_HOLES -> "a hole within another";
            case TopologyValidationError.NESTED_SHELLS -> "a polygon within another of the same feature";
            case TopologyValidationError.DISCONNECTED_INTERIOR -> "holes that cut the polygon in two";
            case TopologyValidationError.DUPLICATE_RINGS -> "the same outline twice";
            case TopologyValidationError.TOO_FEW_POINTS -> "too few different points";
            default -> "a shape that is not proper";
        };
    }
}

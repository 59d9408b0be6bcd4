package org.headfall.scenarios.vector;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.spatial.SpatialFormatException;
import tools.jackson.core.JsonToken;

/** Reads members {@code coordinates} of any shape. */
final class CoordinatesReader {
    /** A multipolygon is a list of polygons, these of rings, these of positions, these of numbers. */
    private static final int DEEPEST = 4;

    private final JsonText text;
    private final VectorLimits limits;
    private int count;

    CoordinatesReader(JsonText text, VectorLimits limits) {
        this.text = text;
        this.limits = limits;
    }

    /** The coordinates whose first bracket the text stands at; moves to their last. */
    Coordinates read() {
        return read(1);
    }

    private Coordinates read(int depth) {
        if (text.token() != JsonToken.START_ARRAY) {
            throw text.fault(text.shown(), "coordinates in brackets");
        }
        if (depth > DEEPEST) {
            throw text.fault("another list within lists", "coordinates of points, lines and polygons");
        }
        TextPosition position = text.position();
        JsonToken first = text.next();
        if (first == JsonToken.VALUE_NUMBER_INT || first == JsonToken.VALUE_NUMBER_FLOAT) {
            return pair(position);
        }
        List<Coordinates> entries = new ArrayList<>();
        while (text.token() != JsonToken.END_ARRAY) {
            entries.add(read(depth + 1));
            text.next();
        }
        return new Coordinates.Listing(entries, position);
    }

    private Coordinates.Pair pair(TextPosition position) {
        count++;
        if (count > limits.coordinates()) {
            throw text.fault(
                    position,
                    "more coordinates",
                    "up to " + limits.coordinates() + " coordinates in a file; simplify the shapes");
        }
        double x = text.number();
        double y = nextNumber();
        if (text.next() != JsonToken.END_ARRAY) {
            nextHeight();
        }
        return new Coordinates.Pair(x, y, position);
    }

    private double nextNumber() {
        text.next();
        requireNumber();
        return text.number();
    }

    private void nextHeight() {
        requireNumber();
        if (text.next() != JsonToken.END_ARRAY) {
            throw wrongPair();
        }
    }

    private void requireNumber() {
        if (text.token() != JsonToken.VALUE_NUMBER_INT && text.token() != JsonToken.VALUE_NUMBER_FLOAT) {
            throw wrongPair();
        }
    }

    private SpatialFormatException wrongPair() {
        return text.fault(text.shown(), "easting and northing, as in [349500, 6521000]");
    }
}

package org.headfall.scenarios.vector;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * Reads features from a GeoJSON file (RFC 7946): a FeatureCollection or a single Feature with shapes of the kinds
 * Point, LineString, Polygon and MultiPolygon. Heights, identifiers and bounding boxes are passed over.
 */
public final class GeoJsonReader {
    private final VectorLimits limits;

    /**
     * A reader.
     *
     * @param limits greatest sizes
     */
    public GeoJsonReader(VectorLimits limits) {
        this.limits = limits;
    }

    /**
     * Reads a file.
     *
     * @param file a GeoJSON file
     * @return at least one feature, each a proper shape, and what the file says about its coordinates
     * @throws SpatialFormatException for the first fault: of the file system, of the text, of a feature
     */
    public FeatureFile read(Path file) {
        return read(file, fault -> {
            throw fault;
        });
    }

    /**
     * Reads a file and goes on after faults of single features.
     *
     * @param file a GeoJSON file
     * @param faults receives the faults of features, which are left out of the result
     * @return the features without fault and what the file says about its coordinates
     * @throws SpatialFormatException if the file cannot be read, is too large or is no GeoJSON of features
     */
    public FeatureFile read(Path file, Consumer<SpatialFormatException> faults) {
        try {
            limits.requireSize(file);
            try (JsonText text = JsonText.open(file, limits)) {
                return new FeatureReader(file, text, limits, faults).read();
            }
        } catch (IOException unreadable) {
            throw SpatialFormatException.of(
                            file, "a file that cannot be read (" + unreadable.getMessage() + ")", "a GeoJSON file")
                    .causedBy(unreadable);
        }
    }
}

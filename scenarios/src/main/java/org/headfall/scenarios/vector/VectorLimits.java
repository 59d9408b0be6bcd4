package org.headfall.scenarios.vector;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * How large a file of features may be. Readers check before they reserve memory.
 *
 * @param fileBytes greatest size of the file in bytes
 * @param features greatest number of features
 * @param coordinates greatest number of coordinates of all features together
 * @param depth greatest number of lists and objects within each other
 */
public record VectorLimits(long fileBytes, int features, int coordinates, int depth) {

    /** Files up to 200 MB with 100,000 features of 2 million coordinates (about 100 MB of memory), 30 levels deep. */
    public static final VectorLimits DEFAULT = new VectorLimits(200_000_000L, 100_000, 2_000_000, 30);

    void requireSize(Path file) throws IOException {
        long bytes = Files.size(file);
        if (bytes > fileBytes) {
            throw SpatialFormatException.of(
                    file,
                    "a file of " + bytes / 1_000_000 + " MB",
                    "GeoJSON files up to " + fileBytes / 1_000_000 + " MB; cut it to the extent of the grid");
        }
    }
}

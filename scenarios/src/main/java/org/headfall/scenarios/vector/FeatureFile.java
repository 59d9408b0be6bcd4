package org.headfall.scenarios.vector;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The features of a file and what it says about their coordinates.
 *
 * @param file where they were read from
 * @param features the features, in the order of the file
 * @param reference name of the coordinate reference system, if the file gives one: a member {@code crs}, which RFC 7946
 *     dropped but which programs write for coordinates of a plane
 */
public record FeatureFile(Path file, List<Feature> features, Optional<String> reference) {
    private static final Pattern EPSG = Pattern.compile("(?:urn:ogc:def:crs:EPSG:[0-9.]*:|EPSG:)([0-9]{4,6})");

    /** Copies the list. */
    public FeatureFile {
        features = List.copyOf(features);
    }

    /** {@return the EPSG code of the coordinate reference system, if the file gives one} */
    public OptionalInt epsgCode() {
        Matcher code = EPSG.matcher(reference.orElse(""));
        return code.matches() ? OptionalInt.of(Integer.parseInt(code.group(1))) : OptionalInt.empty();
    }
}

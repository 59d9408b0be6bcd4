package org.headfall.scenarios.reference;

import java.util.Optional;

/**
 * The names that the EPSG dataset gives to a projected system and to the geographic one below it.
 *
 * @param projected name of the projected system, such as "WGS 84 / UTM zone 55S"
 * @param geographic name of the geographic system, such as "WGS 84"
 * @param geographicCode its EPSG code, if the dataset tells
 * @param datum name of its datum; the name of the geographic system where the dataset is silent
 */
record ReferenceNames(String projected, String geographic, Optional<String> geographicCode, String datum) {

    /** Looks the names up in the files that come with proj4j. */
    static ReferenceNames of(int code) {
        ReferenceDefinitions all = ReferenceDefinitions.bundled();
        ReferenceDefinitions.Entry projected = all.ofCode(Integer.toString(code))
                .orElse(new ReferenceDefinitions.Entry("EPSG:" + code, Integer.toString(code), ""));
        String geographicName = projected.name().split(" / ", 2)[0];
        Optional<ReferenceDefinitions.Entry> geographic =
                all.first(entry -> entry.name().equals(geographicName)
                        && entry.parameters().contains("+proj=longlat")
                        && entry.ellipsoid().equals(projected.ellipsoid()));
        String datum = geographic.flatMap(entry -> all.datumName(entry.code())).orElse(geographicName);
        return new ReferenceNames(
                projected.name(), geographicName, geographic.map(ReferenceDefinitions.Entry::code), datum);
    }
}

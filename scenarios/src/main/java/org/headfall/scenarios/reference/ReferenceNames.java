package org.headfall.scenarios.reference;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.locationtech.proj4j.CoordinateReferenceSystem;

/**
 * The names that the EPSG dataset gives to a projected system and to the geographic one below it.
 *
 * @param projected name of the projected system, such as "WGS 84 / UTM zone 55S"
 * @param geographic name of the geographic system, such as "WGS 84"
 * @param geographicCode its EPSG code, if the dataset tells
 * @param datum name of its datum; the name of the geographic system where the dataset is silent
 */
record ReferenceNames(String projected, String geographic, Optional<String> geographicCode, String datum) {
    private static final String DEFINITIONS = "/proj4/nad/epsg";
    private static final String GEOGRAPHIC_SYSTEMS = "/proj4/gcs.csv";
    private static final Pattern DEFINITION = Pattern.compile("^<([0-9]+)> (.*?) *<>.*$");
    private static final Pattern ELLIPSOID = Pattern.compile("\\+(?:datum|ellps)=[^ ]+");

    /** Looks the names up in the files that come with proj4j. */
    static ReferenceNames of(int code) {
        Entry projected = find(entry -> entry.code.equals(Integer.toString(code)))
                .orElse(new Entry("EPSG:" + code, Integer.toString(code), ""));
        String geographicName = projected.name.split(" / ", 2)[0];
        Optional<Entry> geographic = find(entry -> entry.name.equals(geographicName)
                && entry.parameters.contains("+proj=longlat")
                && entry.ellipsoid().equals(projected.ellipsoid()));
        String datum = geographic.flatMap(entry -> datumName(entry.code)).orElse(geographicName);
        return new ReferenceNames(projected.name, geographicName, geographic.map(entry -> entry.code), datum);
    }

    private record Entry(String name, String code, String parameters) {
        String ellipsoid() {
            Matcher matcher = ELLIPSOID.matcher(parameters);
            return matcher.find() ? matcher.group() : "";
        }
    }

    private interface Condition {
        boolean holds(Entry entry);
    }

    /** The first entry of the list of definitions that fulfils a condition. The line above it is its name. */
    private static Optional<Entry> find(Condition condition) {
        try (BufferedReader reader = open(DEFINITIONS)) {
            String name = "";
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                Matcher matcher = DEFINITION.matcher(line);
                if (line.startsWith("# ")) {
                    name = line.substring(2).trim();
                } else if (matcher.matches()) {
                    Entry entry = new Entry(name, matcher.group(1), matcher.group(2));
                    if (condition.holds(entry)) {
                        return Optional.of(entry);
                    }
                }
            }
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Optional<String> datumName(String geographicCode) {
        try (Reader reader = open(GEOGRAPHIC_SYSTEMS);
                CsvReader<NamedCsvRecord> records = CsvReader.builder().ofNamedCsvRecord(reader)) {
            return records.stream()
                    .filter(row -> row.getField("COORD_REF_SYS_CODE").equals(geographicCode))
                    .map(row -> row.getField("DATUM_NAME"))
                    .findFirst();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BufferedReader open(String resource) {
        InputStream stream = CoordinateReferenceSystem.class.getResourceAsStream(resource);
        if (stream == null) {
            throw new IllegalStateException("the list of reference systems " + resource + " is not on the class path");
        }
        return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
    }
}

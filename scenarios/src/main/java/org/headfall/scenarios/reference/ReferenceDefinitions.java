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
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.locationtech.proj4j.CoordinateReferenceSystem;

/**
 * The EPSG dataset as it comes with proj4j, read once: thousands of runs in one process ask for the same system. Immutable.
 */
final class ReferenceDefinitions {
    private static final String DEFINITIONS = "/proj4/nad/epsg";
    private static final String GEOGRAPHIC_SYSTEMS = "/proj4/gcs.csv";
    private static final Pattern ELLIPSOID = Pattern.compile("\\+(?:datum|ellps)=[^ ]+");

    private final Map<String, Entry> entries;

    private ReferenceDefinitions(Map<String, Entry> entries) {
        this.entries = entries;
    }

    /**
     * A system.
     *
     * @param name its name
     * @param code its EPSG code
     * @param parameters its definition in the words of PROJ
     */
    record Entry(String name, String code, String parameters) {
        String ellipsoid() {
            Matcher matcher = ELLIPSOID.matcher(parameters);
            return matcher.find() ? matcher.group() : "";
        }
    }

    /** Read when it is first asked for. */
    private static final class Bundled {
        static final ReferenceDefinitions ALL = new ReferenceDefinitions(readEntries());
    }

    /** Names of the datums of geographic systems by their codes, read when one is first asked for. */
    private static final class DatumNames {
        static final Map<String, String> ALL = readDatumNames();
    }

    static ReferenceDefinitions bundled() {
        return Bundled.ALL;
    }

    Optional<Entry> ofCode(String code) {
        return Optional.ofNullable(entries.get(code));
    }

    /** The first system, in the order of the list, that fulfils a condition. */
    Optional<Entry> first(Predicate<Entry> condition) {
        return entries.values().stream().filter(condition).findFirst();
    }

    /** Name of the datum of a geographic system. */
    Optional<String> datumName(String geographicCode) {
        return Optional.ofNullable(DatumNames.ALL.get(geographicCode));
    }

    /** Lines such as {@code <4326> +proj=longlat +datum=WGS84 +no_defs  <>}. The line above it is its name. */
    private static Map<String, Entry> readEntries() {
        Map<String, Entry> entries = new LinkedHashMap<>();
        try (BufferedReader reader = open(DEFINITIONS)) {
            String name = "";
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                int end = line.indexOf("> ");
                int close = line.lastIndexOf("<>");
                if (line.startsWith("# ")) {
                    name = line.substring(2).trim();
                } else if (line.startsWith("<") && end > 0 && close > end) {
                    String code = line.substring(1, end);
                    entries.putIfAbsent(
                            code,
                            new Entry(name, code, line.substring(end + 2, close).trim()));
                }
            }
            return entries;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> readDatumNames() {
        Map<String, String> names = new HashMap<>();
        try (Reader reader = open(GEOGRAPHIC_SYSTEMS);
                CsvReader<NamedCsvRecord> records = CsvReader.builder().ofNamedCsvRecord(reader)) {
            records.forEach(row -> names.putIfAbsent(row.getField("COORD_REF_SYS_CODE"), row.getField("DATUM_NAME")));
            return names;
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

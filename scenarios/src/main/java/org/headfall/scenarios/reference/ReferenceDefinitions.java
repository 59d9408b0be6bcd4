package org.headfall.scenarios.reference;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.locationtech.proj4j.CoordinateReferenceSystem;

/**
 * The EPSG dataset as it comes with proj4j, read once: thousands of runs in one process ask for the same system. Immutable.
 *
 * <p>It has lines such as {@code <4326> +proj=longlat +datum=WGS84 +no_defs  <>}. The nearest line above that begins with
 * {@code #} and a space is the name of the system. The text is searched as it is: a run asks for one or two systems of
 * some six thousand.
 */
final class ReferenceDefinitions {
    private static final String DEFINITIONS = "/proj4/nad/epsg";
    private static final String GEOGRAPHIC_SYSTEMS = "/proj4/gcs.csv";
    private static final String NAME_BEGINS = "\n# ";
    private static final String ENTRY_BEGINS = "\n<";
    private static final String CODE_ENDS = "> ";
    private static final String ENTRY_ENDS = "<>";
    private static final Pattern ELLIPSOID = Pattern.compile("\\+(?:datum|ellps)=[^ ]+");

    /** The dataset, each line with a line feed before it. */
    private final String text;

    ReferenceDefinitions(String lines) {
        this.text = "\n" + lines;
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
        static final ReferenceDefinitions ALL = new ReferenceDefinitions(read(DEFINITIONS));
    }

    /** Names of the datums of geographic systems by their codes, read when one is first asked for. */
    private static final class DatumNames {
        static final Map<String, String> ALL = readDatumNames();
    }

    static ReferenceDefinitions bundled() {
        return Bundled.ALL;
    }

    Optional<Entry> ofCode(String code) {
        return entryAfter(text.indexOf(ENTRY_BEGINS + code + CODE_ENDS));
    }

    /** The first system, in the order of the list, that fulfils a condition. */
    Optional<Entry> first(Predicate<Entry> condition) {
        for (int at = text.indexOf(ENTRY_BEGINS); at >= 0; at = text.indexOf(ENTRY_BEGINS, at + 1)) {
            Optional<Entry> entry = entryAfter(at).filter(condition);
            if (entry.isPresent()) {
                return entry;
            }
        }
        return Optional.empty();
    }

    /** The entry whose line begins after a line feed; nothing if there is no such line feed, or the line is no entry. */
    private Optional<Entry> entryAfter(int lineFeed) {
        if (lineFeed < 0) {
            return Optional.empty();
        }
        String line = lineFrom(lineFeed + 1);
        int codeEnd = line.indexOf(CODE_ENDS);
        int close = line.lastIndexOf(ENTRY_ENDS);
        if (codeEnd < 0 || close <= codeEnd) {
            return Optional.empty();
        }
        int named = text.lastIndexOf(NAME_BEGINS, lineFeed);
        String name = named < 0 ? "" : lineFrom(named + NAME_BEGINS.length()).trim();
        String parameters = line.substring(codeEnd + CODE_ENDS.length(), close).trim();
        return Optional.of(new Entry(name, line.substring(1, codeEnd), parameters));
    }

    private String lineFrom(int start) {
        int end = text.indexOf('\n', start);
        return end < 0 ? text.substring(start) : text.substring(start, end);
    }

    /** Name of the datum of a geographic system. */
    Optional<String> datumName(String geographicCode) {
        return Optional.ofNullable(DatumNames.ALL.get(geographicCode));
    }

    private static Map<String, String> readDatumNames() {
        Map<String, String> names = new HashMap<>();
        try (Reader reader = new InputStreamReader(open(GEOGRAPHIC_SYSTEMS), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> records = CsvReader.builder().ofNamedCsvRecord(reader)) {
            records.forEach(row -> names.putIfAbsent(row.getField("COORD_REF_SYS_CODE"), row.getField("DATUM_NAME")));
            return names;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String read(String resource) {
        try (InputStream stream = open(resource)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream open(String resource) {
        InputStream stream = CoordinateReferenceSystem.class.getResourceAsStream(resource);
        if (stream == null) {
            throw new IllegalStateException("the list of reference systems " + resource + " is not on the class path");
        }
        return stream;
    }
}

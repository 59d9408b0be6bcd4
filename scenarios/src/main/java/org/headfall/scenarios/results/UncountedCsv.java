package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.limits.UncountedLimit;

/** Writes limits that a search for sites or rates, or for the last day for acting, could not count. */
public final class UncountedCsv {

    /** Name of the file in the folder of what was found. */
    public static final String NAME = "limits-not-counted.csv";

    /** Headings of its columns. */
    public static final List<String> HEADER = List.of("limit", "why it is not counted", "by the simulator");

    private UncountedCsv() {}

    /** The line of a limit. */
    public static CsvLineCells line(UncountedLimit one) {
        return new CsvLineCells().text(one.limit()).text(one.reason()).text(one.outcome());
    }

    /**
     * Writes the file.
     *
     * @param target the file
     * @param limits the limits
     * @throws IOException if it cannot be written
     */
    public static void write(Path target, List<UncountedLimit> limits) throws IOException {
        CsvFile.write(target, HEADER, limits, UncountedCsv::line);
    }
}

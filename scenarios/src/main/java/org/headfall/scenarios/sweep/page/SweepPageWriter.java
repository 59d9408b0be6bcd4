package org.headfall.scenarios.sweep.page;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.report.page.PageFile;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Writes the page of a sweep as one html file. */
public final class SweepPageWriter {

    private SweepPageWriter() {}

    /**
     * Writes the page. The file appears under its name when it is whole; one of that name is replaced.
     *
     * @param table the runs
     * @param program program and version
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(SweepTable table, String program, Path file) throws IOException {
        PageFile.write("sweep.jte", SweepPage.of(table, program), file);
    }
}

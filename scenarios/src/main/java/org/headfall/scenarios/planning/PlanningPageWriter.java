package org.headfall.scenarios.planning;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.report.page.PageFile;

/** Writes the page of a plan as one html file. */
public final class PlanningPageWriter {

    private PlanningPageWriter() {}

    /**
     * Writes the page. The file appears under its name when it is whole; one of that name is replaced.
     *
     * @param page the page
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(PlanningPage page, Path file) throws IOException {
        PageFile.write("planning.jte", page, file);
    }
}

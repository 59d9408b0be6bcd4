package org.headfall.scenarios.report;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.page.PageFile;
import org.headfall.scenarios.report.page.ReportPage;

/** Writes a report as one html file. */
public final class ReportWriter {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "report.html";

    private ReportWriter() {}

    /**
     * Writes the report. The file appears under its name when it is whole; one of that name is replaced.
     *
     * @param content what the report says
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(ReportContent content, Path file) throws IOException {
        PageFile.write("report.jte", ReportPage.of(content), file);
    }
}

package org.headfall.scenarios.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.WriterOutput;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.page.ReportPage;

/** Writes a report as one html file. */
public final class ReportWriter {

    private static final String TEMPLATES = "org.headfall.scenarios.report.template";

    private ReportWriter() {}

    /**
     * Writes the report. The file appears under its name when it is whole; one of that name is replaced.
     *
     * @param content what the report says
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(ReportContent content, Path file) throws IOException {
        TemplateEngine engine = TemplateEngine.createPrecompiled(
                null, ContentType.Html, ReportWriter.class.getClassLoader(), TEMPLATES);
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try {
            try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
                engine.render("report.jte", ReportPage.of(content), new WriterOutput(writer));
            }
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}

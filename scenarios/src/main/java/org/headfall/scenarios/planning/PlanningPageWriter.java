package org.headfall.scenarios.planning;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.WriterOutput;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes the page of a plan as one html file. */
public final class PlanningPageWriter {

    private static final String TEMPLATES = "org.headfall.scenarios.report.template";

    private PlanningPageWriter() {}

    /**
     * Writes the page.
     *
     * @param page the page
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(PlanningPage page, Path file) throws IOException {
        TemplateEngine engine = TemplateEngine.createPrecompiled(
                null, ContentType.Html, PlanningPageWriter.class.getClassLoader(), TEMPLATES);
        try (Writer writer = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            engine.render("planning.jte", page, new WriterOutput(writer));
        }
    }
}

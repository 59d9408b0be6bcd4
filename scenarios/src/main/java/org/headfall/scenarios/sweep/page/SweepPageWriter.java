package org.headfall.scenarios.sweep.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.WriterOutput;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Writes the page of a sweep as one html file. */
public final class SweepPageWriter {

    private static final String TEMPLATES = "org.headfall.scenarios.report.template";

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
        TemplateEngine engine = TemplateEngine.createPrecompiled(
                null, ContentType.Html, SweepPageWriter.class.getClassLoader(), TEMPLATES);
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
            engine.render("sweep.jte", SweepPage.of(table, program), new WriterOutput(writer));
        }
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }
}

package org.headfall.scenarios.report.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.WriterOutput;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes pages as html files. */
public final class PageFile {

    private static final String TEMPLATES = "org.headfall.scenarios.report.template";

    private PageFile() {}

    /**
     * Writes a page. The file appears under its name when it is whole, and one of that name is replaced; if it cannot be
     * written, nothing is left behind.
     *
     * @param template name of the template, such as {@code report.jte}
     * @param page what the template shows
     * @param file the html file
     * @throws IOException if the file cannot be written
     */
    public static void write(String template, Object page, Path file) throws IOException {
        TemplateEngine engine =
                TemplateEngine.createPrecompiled(null, ContentType.Html, PageFile.class.getClassLoader(), TEMPLATES);
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try {
            try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
                engine.render(template, page, new WriterOutput(writer));
            }
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}

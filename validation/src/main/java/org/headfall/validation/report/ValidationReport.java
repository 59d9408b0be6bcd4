package org.headfall.validation.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.WriterOutput;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.headfall.validation.check.CaseResult;

/** Writes {@code validation.html} and {@code validation.csv}. Each appears under its name when it is whole. */
public final class ValidationReport {

    /** Name of the page. */
    public static final String PAGE = "validation.html";

    /** Name of the table. */
    public static final String TABLE = "validation.csv";

    private static final String TEMPLATES = "org.headfall.validation.report.template";

    private ValidationReport() {}

    /**
     * Writes both files; those of a former validation are replaced.
     *
     * @param results what came of the cases
     * @param version name and version of the program
     * @param folder folder to write into; made if missing
     * @throws IOException if a file cannot be written
     */
    public static void write(List<CaseResult> results, String version, Path folder) throws IOException {
        Files.createDirectories(folder);
        TemplateEngine engine = TemplateEngine.createPrecompiled(
                null, ContentType.Html, ValidationReport.class.getClassLoader(), TEMPLATES);
        ValidationPage page = ValidationPage.of(results, version);
        whole(folder.resolve(PAGE), writer -> engine.render("validation.jte", page, new WriterOutput(writer)));
        whole(folder.resolve(TABLE), writer -> ComparisonTable.write(results, writer));
    }

    private static void whole(Path file, Content content) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
            content.write(writer);
        }
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    /** What goes into a file. */
    @FunctionalInterface
    private interface Content {
        void write(Writer writer) throws IOException;
    }
}

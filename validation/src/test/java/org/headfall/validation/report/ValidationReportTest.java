package org.headfall.validation.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.CaseResult.Verdict;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Misprint;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.UnavailableException;
import org.headfall.validation.check.ValidationCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cases made up to pass, fail, break off and be skipped, and what the page and the table say of them. */
class ValidationReportTest {

    private static final Source SOURCE =
            new Source("Nobody", 1999, "Journal of Invented <Tests>", "p. 1", Standing.READ);
    private static final Tolerance CENTIMETRE = new Tolerance(0.01, "a centimetre");

    private static CaseResult run(String name, ValidationCase.Procedure procedure) {
        return new ValidationCase(
                        name,
                        "Title of " + name,
                        Part.SIMULATOR,
                        List.of(SOURCE),
                        "shows " + name,
                        "leaves " + name,
                        ValidationCase.Pace.FAST,
                        procedure)
                .run();
    }

    private static CaseResult comparing(String name, double ours) {
        return run(name, findings -> {
            findings.compare(Comparison.withPrinted("s, \"at\" r = 5, wall", "m", "2.50", ours, CENTIMETRE));
            addExtras(findings);
        });
    }

    private static void addExtras(Findings findings) {
        double[] x = {1, 10, 100};
        double[] y = {1e-9, 2, 3};
        findings.plot(new Plot(
                "a plot",
                Plot.Scale.logarithmic("days"),
                Plot.Scale.logarithmic("metres"),
                List.of(
                        new Series("published", Series.Kind.PUBLISHED, 0, x, y),
                        new Series("ours", Series.Kind.OURS, 3, x, y))));
        findings.misprint(new Misprint(SOURCE, "u=3", "7.1", "7.2", "by two routes"));
    }

    @Test
    void aVerdictFollowsFromTheComparisons() {
        assertEquals(Verdict.PASSED, comparing("near", 2.509).verdict());
        assertEquals(Verdict.FAILED, comparing("off", 2.511).verdict());
        assertEquals(Verdict.FAILED, comparing("lost", Double.NaN).verdict());
        assertEquals(Verdict.FAILED, run("empty", findings -> {}).verdict());
        assertEquals(
                Verdict.FAILED,
                run("broken", findings -> {
                            throw new IllegalStateException("no convergence");
                        })
                        .verdict());
        assertEquals(
                Verdict.SKIPPED,
                run("missing", findings -> {
                            throw new UnavailableException("no such program");
                        })
                        .verdict());
    }

    @Test
    void theMessageOfAFailureNamesSourceAndNumbers() {
        String text = comparing("off", 2.6).explanation();
        for (String part : List.of("Nobody (1999)", "p. 1", "2.50", "2.6", "a centimetre")) {
            assertTrue(text.contains(part), text);
        }
    }

    @Test
    void pageAndTableTellAllCasesAndNeedNoNetwork(@TempDir Path folder) throws IOException {
        List<CaseResult> results = List.of(comparing("near", 2.509), comparing("off", 2.6), run("missing", findings -> {
            throw new UnavailableException("no such program");
        }));
        ValidationReport.write(results, "Headfall 1.2.3", folder);
        String page = Files.readString(folder.resolve(ValidationReport.PAGE));
        assertTrue(page.contains("1 of 3 cases are failing"), "answer");
        assertTrue(page.contains("<section class=\"case failing\" id=\"off\">"), "failing case");
        assertTrue(page.contains("Journal of Invented &lt;Tests&gt;"), "escaped source");
        assertTrue(page.contains("no such program") && page.contains("by two routes"), "reasons");
        assertFalse(page.contains("NaN"), "plots hold no place that is not a number");
        assertFalse(page.replace("http://www.w3.org/2000/svg", "").contains("://"), "nothing is fetched");
        try (var csv = CsvReader.builder().ofNamedCsvRecord(folder.resolve(ValidationReport.TABLE))) {
            List<NamedCsvRecord> lines = csv.stream().toList();
            assertEquals(
                    List.of("near", "off", "missing"),
                    lines.stream().map(line -> line.getField("case")).toList());
            assertEquals(
                    List.of("yes", "no", ""),
                    lines.stream().map(line -> line.getField("holds")).toList());
            assertEquals("s, \"at\" r = 5, wall", lines.get(1).getField("quantity"));
            assertEquals("0.1", lines.get(1).getField("difference"));
        }
        try (var files = Files.list(folder)) {
            assertEquals(2, files.count(), "no part is left behind");
        }
    }
}

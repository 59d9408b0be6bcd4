package org.headfall.validation.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.Misprint;
import org.headfall.validation.check.Part;

/**
 * What the page shows.
 *
 * @param version name and version of the program
 * @param computer Java and processors it ran with
 * @param cases all cases in order
 */
public record ValidationPage(String version, String computer, List<CaseView> cases) {

    /** Copies the cases. */
    public ValidationPage {
        cases = List.copyOf(cases);
    }

    /** The page of some results. */
    static ValidationPage of(List<CaseResult> results, String version) {
        String computer = "Java " + Runtime.version() + ", " + System.getProperty("os.name") + " "
                + System.getProperty("os.arch");
        return new ValidationPage(
                version, computer, results.stream().map(CaseView::of).toList());
    }

    /** The parts that have cases. */
    public List<Part> parts() {
        return Arrays.stream(Part.values()).filter(part -> !of(part).isEmpty()).toList();
    }

    /** Cases of a part. */
    public List<CaseView> of(Part part) {
        return cases.stream()
                .filter(view -> view.result().validationCase().part() == part)
                .toList();
    }

    /** Cases with a verdict. */
    public List<CaseView> with(CaseResult.Verdict verdict) {
        return cases.stream().filter(view -> view.result().verdict() == verdict).toList();
    }

    /** Cases that fail. */
    public List<CaseView> failing() {
        return with(CaseResult.Verdict.FAILED);
    }

    /** Cases that could not be run. */
    public List<CaseView> skipped() {
        return with(CaseResult.Verdict.SKIPPED);
    }

    /** Comparisons in all. */
    public int comparisons() {
        return cases.stream()
                .mapToInt(view -> view.result().comparisons().size())
                .sum();
    }

    /** Misprints found in all cases. */
    public List<Misprint> misprints() {
        return cases.stream()
                .flatMap(view -> view.result().misprints().stream())
                .toList();
    }

    /** Styles of the page. */
    public String style() {
        try (InputStream stream = ValidationPage.class.getResourceAsStream("validation.css")) {
            if (stream == null) {
                throw new IllegalStateException("the program is incomplete: validation.css is missing");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}

package org.headfall.validation.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.ValidationCase;

/** All comparisons as CSV (RFC 4180), one a line; a case that compared nothing has one line that says why. */
final class ComparisonTable {

    private static final List<String> HEADER = List.of(
            "case",
            "title",
            "verdict",
            "source",
            "year",
            "publication",
            "place",
            "standing of the published number",
            "quantity",
            "unit",
            "published",
            "ours",
            "difference",
            "tolerance",
            "holds",
            "why this tolerance",
            "proves",
            "leaves open",
            "remarks");

    private ComparisonTable() {}

    static void write(List<CaseResult> results, Writer writer) throws IOException {
        // The caller closes the writer: closing this would close it too early for whoever gave it.
        CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(writer);
        csv.writeRecord(HEADER);
        for (CaseResult result : results) {
            if (result.comparisons().isEmpty()) {
                csv.writeRecord(line(result, List.of("", "", "", "", "", "", "", "")));
            }
            for (Comparison comparison : result.comparisons()) {
                csv.writeRecord(line(result, cells(comparison)));
            }
        }
        csv.flush();
    }

    private static List<String> cells(Comparison comparison) {
        return List.of(
                comparison.quantity(),
                comparison.unit(),
                comparison.printed(),
                Double.toString(comparison.ours()),
                CaseView.small(comparison.difference()),
                CaseView.small(comparison.tolerance().allowed()),
                comparison.holds() ? "yes" : "no",
                comparison.tolerance().reason());
    }

    private static List<String> line(CaseResult result, List<String> comparison) {
        ValidationCase validationCase = result.validationCase();
        List<String> line = new ArrayList<>(List.of(
                validationCase.name(),
                validationCase.title(),
                result.verdict().words(),
                joined(validationCase, Source::authors),
                joined(validationCase, source -> source.year() == 0 ? "" : Integer.toString(source.year())),
                joined(validationCase, Source::title),
                joined(validationCase, Source::place),
                joined(validationCase, source -> source.standing().words())));
        line.addAll(comparison);
        line.add(validationCase.proves());
        line.add(validationCase.leavesOpen());
        line.add(String.join("; ", result.notes()));
        return line;
    }

    private static String joined(ValidationCase validationCase, Function<Source, String> part) {
        return validationCase.sources().stream().map(part).collect(Collectors.joining("; "));
    }
}

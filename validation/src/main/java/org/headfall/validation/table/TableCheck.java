package org.headfall.validation.table;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Misprint;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Tolerance;

/**
 * Compares a function with a table of its values.
 *
 * @param file the table
 * @param rows number of rows it must have
 * @param entry names a row, such as "u=1e-5"
 * @param ours our value for a row
 */
record TableCheck(
        String file, int rows, Function<NamedCsvRecord, String> entry, ToDoubleFunction<NamedCsvRecord> ours) {

    private static final String RECOMPUTED = "half a unit of the last recomputed digit";

    /** Compares every row with the recomputed digits of a column. */
    void recomputed(Findings findings, String column, String unit) {
        for (NamedCsvRecord row : ReferenceTable.rows(file, rows)) {
            findings.compare(exact(row, column, unit, RECOMPUTED));
        }
    }

    private Comparison exact(NamedCsvRecord row, String column, String unit, String reason) {
        String digits = row.getField(column);
        return Comparison.withPrinted(
                entry.apply(row),
                unit,
                digits,
                ours.applyAsDouble(row),
                new Tolerance(Figures.halfUnitOfLastDigit(digits), reason));
    }

    /**
     * Compares with printed numbers to their last digit. An entry listed as a misprint is compared with the recomputed
     * value instead, if that too says that the print is wrong.
     *
     * @param findings receives the comparisons
     * @param source where the numbers are printed
     * @param expected how many there are
     * @param printed the printed number of a row, if it has one
     * @param listed how the list of misprints quotes a printed number
     * @param exactColumn column of the recomputed value
     */
    void printed(
            Findings findings,
            Source source,
            int expected,
            Function<NamedCsvRecord, Optional<String>> printed,
            Function<String, String> listed,
            String exactColumn) {
        KnownMisprints misprints = KnownMisprints.of(file);
        int compared = 0;
        for (NamedCsvRecord row : ReferenceTable.rows(file, rows)) {
            Optional<String> number = printed.apply(row);
            if (number.isPresent()) {
                String text = number.get();
                Optional<String> evidence = misprints
                        .evidence(entry.apply(row), listed.apply(text))
                        .filter(words -> !rounds(row.getField(exactColumn), text));
                if (evidence.isPresent()) {
                    findings.misprint(
                            new Misprint(source, entry.apply(row), text, row.getField(exactColumn), evidence.get()));
                    findings.compare(exact(row, exactColumn, "-", "printed " + text + " is a misprint: " + RECOMPUTED));
                } else {
                    findings.compare(Comparison.withPrinted(
                            entry.apply(row),
                            "-",
                            text,
                            ours.applyAsDouble(row),
                            new Tolerance(Figures.halfUnitOfLastDigit(text), "half a unit of the last printed digit")));
                }
                compared++;
            }
        }
        if (compared != expected) {
            throw new IllegalStateException(
                    file + ": " + compared + " printed numbers compared, " + expected + " are expected");
        }
    }

    private static boolean rounds(String exact, String printed) {
        return Math.abs(Double.parseDouble(exact) - Double.parseDouble(printed))
                <= Figures.halfUnitOfLastDigit(printed);
    }
}

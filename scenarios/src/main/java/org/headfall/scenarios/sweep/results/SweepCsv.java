package org.headfall.scenarios.sweep.results;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.headfall.scenarios.sweep.work.InputsJson;

/** Writes {@code sweep.csv}: a line a run with status, inputs and kept figures. */
public final class SweepCsv {

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?(E-?\\d+)?");
    private static final int FIGURE_DECIMALS = 4;
    private static final int FIGURE_DIGITS = 5;
    private static final int MOST_DECIMALS = 15;
    private static final int SECONDS_DECIMALS = 3;

    private SweepCsv() {}

    /**
     * Writes the table.
     *
     * @param target the file
     * @param sweep the sweep
     * @param store its store
     * @throws IOException if it cannot be written
     */
    public static void write(Path target, SweepDocument sweep, SweepStore store) throws IOException {
        List<String> header = new ArrayList<>(List.of("run", "status"));
        sweep.variables().forEach(variable -> header.add("input: " + variable.heading()));
        header.addAll(store.figures());
        header.addAll(List.of("reason", "answered by", "seconds", "recorded at", "host", "program", "SHA-256"));
        try (CsvFile file = new CsvFile(target, header)) {
            store.forEach(run -> {
                try {
                    file.line(line(sweep, run));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
            file.complete();
        } catch (UncheckedIOException e) {
            throw Objects.requireNonNull(e.getCause());
        }
    }

    /** Small figures, such as an error of the balance, keep some digits too. */
    private static int decimals(double figure) {
        return figure == 0 || !Double.isFinite(figure)
                ? FIGURE_DECIMALS
                : Math.max(
                        FIGURE_DECIMALS,
                        Math.min(MOST_DECIMALS, FIGURE_DIGITS - 1 - (int) Math.floor(Math.log10(Math.abs(figure)))));
    }

    /** A number without its unit, which is in the head of the column; else the text of the value. */
    private static void addInput(CsvLineCells cells, Variable variable, String text) {
        String number = variable.unit().isEmpty() ? text : text.replace(" " + variable.unit(), "");
        if (variable.numeric() && NUMBER.matcher(number).matches()) {
            cells.number(Double.parseDouble(number), decimalsOf(number));
        } else {
            cells.text(text);
        }
    }

    private static int decimalsOf(String number) {
        return Math.max(0, new BigDecimal(number).stripTrailingZeros().scale());
    }

    private static CsvLineCells line(SweepDocument sweep, StoredRun run) {
        CsvLineCells cells = new CsvLineCells()
                .text(Integer.toString(run.number()))
                .text(run.status().word());
        Map<String, String> inputs = InputsJson.read(run.inputs());
        for (Variable variable : sweep.variables()) {
            addInput(cells, variable, inputs.getOrDefault(variable.name(), ""));
        }
        for (double figure : run.figures()) {
            cells.number(figure, decimals(figure));
        }
        return cells.text(FailedRuns.inOneLine(run.reason()))
                .text(run.way())
                .number(run.seconds(), SECONDS_DECIMALS)
                .text(run.finished())
                .text(run.host())
                .text(run.program())
                .text(run.hash());
    }
}

package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.Outcome;

/** Writes {@code limits-by-case.csv}: one line a limit and place, with what became of it in each case. */
public final class CaseTable {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "limits-by-case.csv";

    private CaseTable() {}

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results of all cases
     * @param cases the finished runs by the names of their cases, all of the same limits
     * @throws IOException if it cannot be written
     */
    public static void write(Path folder, Map<String, FinishedRun> cases) throws IOException {
        List<String> header = new ArrayList<>(List.of("limit", "quantity", "place", "conditions", "allowed", "unit"));
        for (String name : cases.keySet()) {
            header.addAll(List.of(name + ": outcome", name + ": worst value", name + ": margin", name + ": error"));
        }
        try (CsvFile file = new CsvFile(folder.resolve(NAME), header)) {
            int limits = cases.values().iterator().next().limits().size();
            for (int i = 0; i < limits; i++) {
                file.line(line(i, cases));
            }
            file.complete();
        }
    }

    private static CsvLineCells line(int index, Map<String, FinishedRun> cases) {
        Limit limit = cases.values().iterator().next().limits().get(index).limit();
        CsvLineCells cells = new CsvLineCells()
                .text(limit.name())
                .text(limit.quantity().words())
                .text(limit.station())
                .text(limit.conditions())
                .number(limit.quantity().allowed(), 3)
                .text(limit.quantity().unit());
        for (FinishedRun run : cases.values()) {
            Outcome outcome = run.limits().get(index).outcome();
            Optional<Outcome.Worst> worst = outcome.worstIfAny();
            cells.text(outcome.words())
                    .number(worst.map(Outcome.Worst::value).orElse(Double.NaN), 3)
                    .number(worst.map(Outcome.Worst::margin).orElse(Double.NaN), 3)
                    .number(worst.map(Outcome.Worst::error).orElse(Double.NaN), 4);
        }
        return cells;
    }
}

package org.headfall.scenarios.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import org.headfall.scenarios.report.content.Interference;
import org.junit.jupiter.api.Test;

class InterferenceTableTest {

    /** What others do is told in metres, and as a share where the place itself does not do the opposite. */
    @Test
    void aShareOfOthersIsToldOnlyWhereItSaysSomething() {
        Interference matrix = new Interference(
                LocalDate.of(2047, 7, 1),
                List.of("Town", "Stock bore"),
                List.of(
                        new Interference.Row("Town", List.of(9.0, 1.0), 10),
                        new Interference.Row("Stock bore", List.of(3.03, -2.64), 0.39),
                        new Interference.Row("Far away", List.of(0.003, 0.001), 0.004)),
                "");
        List<String> byOthers = ResultTables.interference(matrix, 1).rows().stream()
                .map(row -> row.get(3).text().replace('\u00a0', ' '))
                .toList();
        assertEquals(
                List.of(
                        "1.00 m (10.0 %)",
                        "3.03 m (no share: own part \u22122.64 m)", "0.00 m (no share: next to nothing in all)"),
                byOthers);
    }
}

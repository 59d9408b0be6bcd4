package org.headfall.scenarios.findings;

import java.time.LocalDate;
import java.util.List;

/**
 * Who did what until a report date.
 *
 * @param date that date
 * @param drawdown drawdown since the start (m) at every place, the largest first
 * @param loss discharge less than at the start (m³/d) of springs and flowing bores, the largest first
 */
public record AttributionSummary(LocalDate date, List<AttributedChange> drawdown, List<AttributedChange> loss) {

    /** Name of the holder of bores for which the scenario states none. */
    public static final String HOLDER_NOT_STATED = "holder not stated";

    /** Copies the lists. */
    public AttributionSummary {
        drawdown = List.copyOf(drawdown);
        loss = List.copyOf(loss);
    }
}

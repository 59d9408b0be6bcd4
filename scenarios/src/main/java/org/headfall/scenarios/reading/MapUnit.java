package org.headfall.scenarios.reading;

import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.Unit;
import org.jspecify.annotations.Nullable;

/** The unit of numbers in a map file: metres for lengths and levels unless said otherwise, none for pure numbers. */
final class MapUnit {
    private MapUnit() {}

    /**
     * What turns the numbers of a file into metres and days, NaN after a problem has been reported.
     *
     * @param section the section that names the file and may hold the key {@code unit}
     * @param key the key that names the file
     * @param unit the unit as typed in the document or in the file; null if neither gives one
     * @param dimension what the numbers have to measure
     */
    static double factor(Section section, String key, @Nullable String unit, Dimension dimension) {
        if (unit == null && (dimension.isPureNumber() || dimension.unit().equals("m"))) {
            return 1;
        }
        if (unit == null) {
            String found = "numbers without a unit";
            section.refuse(key, Finding.of(ProblemKind.MISSING_UNIT, found, "the key unit, " + dimension.allowed()));
            return Double.NaN;
        }
        try {
            return Unit.parse(unit, dimension).toMetresAndDays();
        } catch (QuantityException wrong) {
            section.refuse(section.has("unit") ? "unit" : key, wrong.finding());
            return Double.NaN;
        }
    }
}

package org.headfall.solver.bore;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRounds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.headfall.solver.analytic.function.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Hot water in a bore: density and viscosity against tables, columns by hand. */
class WaterColumnTest {

    /** Kell (1975), table in the test resources. */
    @Test
    void densityIsThatOfKell() {
        ReferenceTable.read("water_density.csv", 21)
                .rows()
                .forEach(row -> assertRounds(row.text("rho_kg_m3"), Water.density(row.number("t_C")), row));
    }

    /**
     * Dynamic viscosity (mPa s): 1.0016 at 20 °C is the standard of ISO/TR 3666:1998; the others are printed in the CRC
     * Handbook of Chemistry and Physics, from memory, and good to 0.3 %.
     */
    @ParameterizedTest
    @CsvSource({
        "20, 1.0016, 1e-4",
        "0, 1.793, 3e-3",
        "40, 0.653, 3e-3",
        "60, 0.466, 3e-3",
        "80, 0.354, 3e-3",
        "100, 0.282, 3e-3"
    })
    void viscosityIsThatOfTables(double temperature, double printed, double tolerance) {
        double kinematic = Water.kinematicViscosity(temperature) / 86_400;
        assertEquals(printed, 1e3 * kinematic * Water.density(temperature), tolerance * printed);
    }

    /**
     * By hand from Kell's densities 998.204, 992.216, 983.199 and 971.798 kg/m³: the same pressure at the screen carries
     * 1,000 m of water at 40, 60, 80 °C higher by 6.0, 15.3 and 27.2 m than water of 20 °C.
     */
    @ParameterizedTest
    @CsvSource({"40, 992.216", "60, 983.199", "80, 971.798"})
    void hotWaterStandsHigher(double temperature, double density) {
        WaterColumn column = WaterColumn.ofOneTemperature(temperature, -800);
        double expected = -800 + 1000 * 998.204 / density;
        assertEquals(expected, column.level(200), 1e-3);
        assertEquals(200, column.head(column.level(200)), 1e-10);
    }

    /**
     * Pressure from the definition: what the screen carries, {@code rho_20 g (h - z)}, less the weight of the column up to
     * the gauge.
     */
    @Test
    void gaugePressureIsPressureAtTheScreenLessTheColumn() {
        WaterColumn column = WaterColumn.ofOneTemperature(75, -900);
        double head = 130;
        double gauge = 104.5;
        double expected = (998.204 * (head + 900) - 974.849 * (gauge + 900)) * 9.80665 / 1000;
        assertEquals(expected, column.gaugePressure(head, gauge), 0.01);
        assertEquals(head, column.headOfGauge(column.gaugePressure(head, gauge), gauge), 1e-10);
        // Cold: 9.789 kPa a metre.
        assertEquals(998.204 * 9.80665 / 1000 * 25.5, WaterColumn.REFERENCE.gaugePressure(head, gauge), 1e-3);
        assertEquals(123.4, WaterColumn.REFERENCE.level(123.4));
    }

    /** The mean of a column that warms evenly with depth, against the mean of the table's densities from 30 to 90 °C. */
    @Test
    void meanDensityOfAColumnThatWarmsWithDepth() {
        double sum = 0;
        for (var row : ReferenceTable.read("water_density.csv", 21).rows()) {
            double t = row.number("t_C");
            double weight = t == 30 || t == 90 ? 0.5 : t > 30 && t < 90 ? 1 : 0;
            sum += weight * row.number("rho_kg_m3");
        }
        assertEquals(sum / 12, new WaterColumn(30, 90, -1000).meanDensity(), 0.02);
    }

    @Test
    void temperaturesOutOfRangeAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> WaterColumn.ofOneTemperature(-1, 0));
        assertThrows(IllegalArgumentException.class, () -> WaterColumn.ofOneTemperature(111, 0));
        assertThrows(IllegalArgumentException.class, () -> new WaterColumn(20, Double.NaN, 0));
        assertThrows(IllegalArgumentException.class, () -> new WaterColumn(20, 20, Double.NaN));
    }
}

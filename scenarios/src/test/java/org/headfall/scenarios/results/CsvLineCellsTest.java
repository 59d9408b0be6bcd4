package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvLineCellsTest {

    @ParameterizedTest
    @ValueSource(strings = {"-10 L/s", "+2.5 m", "-1.5e-3 m2/d", "-20 %", "-40 m³/d", "-7"})
    void aNumberWithItsUnitStaysAsItIs(String text) {
        assertEquals(List.of(text), new CsvLineCells().text(text).texts());
    }

    /** What begins like a number may still be a formula that calls something: a known way to attack readers of tables. */
    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "-2+3+cmd|' /C calc'!A0", "+1-A1", "-1 HYPERLINK(A1)", "@SUM(1)", "-A1", "-1 m -2 m"})
    void aFormulaBeginsWithAnApostrophe(String text) {
        assertEquals(List.of("'" + text), new CsvLineCells().text(text).texts());
    }

    @ParameterizedTest
    @ValueSource(strings = {"=spring", "-north", "@1", "-7", "'quoted'", "Town 1", "", "'"})
    void aNameIsReadAsItWasBeforeItWasWritten(String name) {
        String written = new CsvLineCells().text(name).texts().get(0);
        assertEquals(name, CsvLineCells.original(written));
    }

    /** Against the exact arithmetic of {@code BigDecimal}, by chance and on, beside and near the middle between neighbours. */
    @Test
    void numbersAreRoundedAsByExactArithmetic() {
        Random random = new Random(20261126);
        for (int i = 0; i < 200_000; i++) {
            int decimals = random.nextInt(8);
            double middle = (random.nextInt(2_000_001) - 1_000_000 + 0.5) / Math.pow(10, decimals);
            double value = switch (i % 4) {
                case 0 -> random.nextGaussian() * Math.pow(10, random.nextInt(24) - 6);
                case 1 -> middle;
                case 2 -> Math.nextUp(middle);
                default -> Math.nextDown(middle);
            };
            String expected = new BigDecimal(value)
                    .setScale(decimals, RoundingMode.HALF_EVEN)
                    .toPlainString();
            assertEquals(expected, CsvLineCells.rounded(value, decimals), () -> value + " to " + decimals);
        }
        for (double value :
                new double[] {-0.0, -0.0004, 0.0005, 0.0015, 2.5, -1e300, Double.MIN_VALUE, 9.2e15, 4.5e18}) {
            String expected =
                    new BigDecimal(value).setScale(3, RoundingMode.HALF_EVEN).toPlainString();
            assertEquals(expected, CsvLineCells.rounded(value, 3));
        }
    }
}

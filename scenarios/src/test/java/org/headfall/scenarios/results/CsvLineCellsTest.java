package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
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
}

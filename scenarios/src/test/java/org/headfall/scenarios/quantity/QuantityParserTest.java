package org.headfall.scenarios.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ucar.units.UnitFormat;
import ucar.units.UnitFormatManager;

class QuantityParserTest {
    /** Exact products, written out by hand; the value must be the nearest double, not one beside it. */
    @ParameterizedTest
    @CsvSource({
        "25 L/s, RATE, 2160",
        "1 L/s, RATE, 86.4",
        "0.8 ML/d, RATE, 800",
        "1 kL/d, RATE, 1",
        "31.5576 ML/yr, RATE, 86.4",
        "1 GL/yr, RATE, 2737.8507871321013",
        "350 m2/d, TRANSMISSIVITY, 350",
        "50 yr, TIME, 18262.5",
        "6 h, TIME, 0.25",
        "90 min, TIME, 0.0625",
        "1e-6 m/d, CONDUCTIVITY, 1e-6",
        "3e-6 1/m, SPECIFIC_STORAGE, 3e-6",
        "3e-6 m-1, SPECIFIC_STORAGE, 3e-6",
        "365.25 mm/yr, RECHARGE, 0.001",
        "1 km, LENGTH, 1000",
        "25 cm, LENGTH, 0.25",
        "-12.5 m, LEVEL, -12.5",
        "2 ha, AREA, 20000",
        "3 km2, AREA, 3000000",
        "25 %, NUMBER, 0.25",
        "2.0e-4, NUMBER, 2.0e-4",
        "350 kPa, PRESSURE, 350",
        "42 degC, TEMPERATURE, 42",
        "42 °C, TEMPERATURE, 42",
        "7464960000 s2/m5, QUADRATIC_WELL_LOSS, 1",
        "0.1 m, LENGTH, 0.1",
        "25L/s, RATE, 2160",
    })
    void convertsToMetresAndDays(String text, Dimension dimension, double value) throws QuantityException {
        Quantity quantity = QuantityParser.parse(text, dimension);
        assertEquals(value, quantity.value(), text);
        assertEquals(text, quantity.text());
    }

    @ParameterizedTest
    @CsvSource({"m3/d", "m³/d", "m^3/d", "m3 d-1", "m3.d-1", "m3·d⁻¹", "m^3 d^-1", "m3*d-1", "m2 m/d", "1/d/m-3"})
    void everyWayToWriteAProductIsTheSame(String unit) throws QuantityException {
        assertEquals(7, QuantityParser.parse("7 " + unit, Dimension.RATE).value());
    }

    @ParameterizedTest
    @CsvSource({
        "25, RATE, MISSING_UNIT",
        "25 m, RATE, WRONG_UNIT",
        "25 m3/d, TRANSMISSIVITY, WRONG_UNIT",
        "25 %, LENGTH, WRONG_UNIT",
        "25 m, NUMBER, WRONG_UNIT",
        "NaN m, LENGTH, NOT_A_NUMBER",
        "Infinity m, LENGTH, NOT_A_NUMBER",
        "-inf m, LENGTH, NOT_A_NUMBER",
        "1e999 m, LENGTH, NOT_A_NUMBER",
        "1e308 km, LENGTH, NOT_A_NUMBER",
        "0x10 m, LENGTH, UNKNOWN_UNIT",
        "m, LENGTH, NOT_A_NUMBER",
        "'2,5 L/s', RATE, DECIMAL_COMMA",
        "'1,250 m', LENGTH, DECIMAL_COMMA",
        "'', LENGTH, EMPTY_VALUE",
        "5 m//d, CONDUCTIVITY, UNKNOWN_UNIT",
        "5 L/s.m, RATE, UNKNOWN_UNIT",
        "5 m^, LENGTH, UNKNOWN_UNIT",
        "5 m0, LENGTH, UNKNOWN_UNIT",
        "5 m 6, LENGTH, UNKNOWN_UNIT",
        "5 m3d-1, RATE, UNKNOWN_UNIT",
    })
    void refusesWithTheKind(String text, Dimension dimension, ProblemKind kind) {
        Finding finding = refused(text, dimension);
        assertEquals(kind, finding.kind(), finding::toString);
    }

    @ParameterizedTest
    @CsvSource({
        "25 l/s, RATE, 25 L/s",
        "0.8 Ml/d, RATE, 0.8 ML/d",
        "50 years, TIME, 50 yr",
        "50 y, TIME, 50 yr",
        "12 metres, LENGTH, 12 m",
        "3 KM, LENGTH, 3 km",
        "3 hr, TIME, 3 h",
        "25 L/sec, RATE, 25 L/s",
        "350 m2/day, TRANSMISSIVITY, 350 m2/d",
        "300 kpa, PRESSURE, 300 kPa",
        "'2,5 L/s', RATE, 2.5 L/s",
    })
    void suggestsTheUnitThatWasMeant(String text, Dimension dimension, String meant) {
        assertEquals(meant, refused(text, dimension).suggestion());
    }

    @ParameterizedTest
    @CsvSource({
        "a, are",
        "gal, imperial",
        "ml, megalitre",
        "ft, 0.3048",
        "psi, 6.894757",
        "bar, 100 kPa",
        "month, differ"
    })
    void saysWhyAWordIsRefused(String unit, String reason) {
        Finding finding = refused("5 " + unit, Dimension.LENGTH);
        assertEquals(ProblemKind.UNKNOWN_UNIT, finding.kind());
        assertTrue(finding.allowed().contains(reason), finding::toString);
    }

    /** UDUNITS is the oracle, its year apart (365.242198781 d there, 365.25 d here). */
    @Test
    void factorsAgreeWithUdunits() throws Exception {
        Map<String, String> ours = Map.ofEntries(
                Map.entry("L/s", "liter/second"),
                Map.entry("ML/d", "megaliter/day"),
                Map.entry("kL/d", "kiloliter/day"),
                Map.entry("GL/d", "gigaliter/day"),
                Map.entry("m2/d", "m2/day"),
                Map.entry("m3/h", "m3/hour"),
                Map.entry("L/min", "liter/minute"),
                Map.entry("mm/d", "mm/day"),
                Map.entry("cm/s", "cm/second"),
                Map.entry("km2", "km2"),
                Map.entry("ha", "hectare"),
                Map.entry("s2/m5", "second2/m5"),
                Map.entry("1/mm", "mm-1"),
                Map.entry("h", "hour"),
                Map.entry("min", "minute"));
        UnitFormat udunits = UnitFormatManager.instance();
        for (Map.Entry<String, String> unit : ours.entrySet()) {
            Unit parsed = new UnitParser(unit.getKey()).parse();
            Exponents exponents = parsed.exponents();
            ucar.units.Unit base = udunits.parse("m" + exponents.length() + " day" + exponents.time());
            double expected = udunits.parse(unit.getValue()).convertTo(1.0, base);
            assertEquals(expected, parsed.toMetresAndDays(), 1e-12 * expected, unit.getKey());
        }
    }

    @Test
    void conversionIsTheNearestDoubleWhereMultiplyingDoublesIsNot() throws QuantityException {
        // 0.1 mm/yr = 0.1 / 1000 / 365.25 = 1/3652500 m/d exactly
        assertEquals(
                1.0 / 3_652_500,
                QuantityParser.parse("0.1 mm/yr", Dimension.RECHARGE).value());
    }

    @Test
    void whateverIsTypedEndsInAQuantityOrAFinding() {
        String letters = "0123456789.,-+eE mkMLGdhsyr/^%()²⁻¹·°Ca\t\"'\u0000\uD83D\uDCA7NaInf";
        long seed = 20260701;
        Random random = new Random(seed);
        List<Dimension> dimensions = List.of(Dimension.values());
        for (int i = 0; i < 200_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(14); n > 0; n--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            Dimension dimension = dimensions.get(random.nextInt(dimensions.size()));
            String what = "seed " + seed + ", text " + i + ": " + text;
            try {
                double value = QuantityParser.parse(text.toString(), dimension).value();
                assertTrue(Double.isFinite(value), what);
            } catch (QuantityException refused) {
                assertTrue(!refused.finding().allowed().isBlank(), what);
            } catch (RuntimeException unexpected) {
                throw new AssertionError(what, unexpected);
            }
        }
    }

    @Test
    void rangesSayWhatTheyAllow() {
        assertEquals("more than 0 m2/d", AllowedRange.POSITIVE.describe("m2/d"));
        assertEquals("at least 0 and at most 1", AllowedRange.between(0, 1).describe(""));
        assertEquals(
                "more than 0 m and at most 0.5 m",
                AllowedRange.positiveUpTo(0.5).describe("m"));
        assertTrue(!AllowedRange.POSITIVE.contains(0) && AllowedRange.NOT_NEGATIVE.contains(0));
        assertTrue(!AllowedRange.ANY.contains(Double.NaN));
    }

    @Test
    void rangesAreSaidInTheUnitThatWasTyped() throws QuantityException {
        AllowedRange years = AllowedRange.between(365.25, 36_525);
        assertEquals(
                "at least 1 yr and at most 100 yr", years.describeFor(QuantityParser.parse("0 yr", Dimension.TIME)));
        assertEquals(
                "at least 365.25 d and at most 36525 d",
                years.describeFor(QuantityParser.parse("1e5 d", Dimension.TIME)));
        assertEquals(
                "at least 0 % and at most 100 %",
                AllowedRange.between(0, 1).describeFor(QuantityParser.parse("150 %", Dimension.NUMBER)));
        assertEquals(
                "at least 0 and at most 1",
                AllowedRange.between(0, 1).describeFor(QuantityParser.parse("1.5", Dimension.NUMBER)));
        assertEquals(
                "more than 0 km", AllowedRange.POSITIVE.describeFor(QuantityParser.parse("-2.5 km", Dimension.LENGTH)));
    }

    private static Finding refused(String text, Dimension dimension) {
        return assertThrows(QuantityException.class, () -> QuantityParser.parse(text, dimension), text)
                .finding();
    }
}

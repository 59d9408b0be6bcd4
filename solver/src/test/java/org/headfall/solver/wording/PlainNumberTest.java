package org.headfall.solver.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How people write numbers; common practice, no source. */
class PlainNumberTest {

    @ParameterizedTest
    @CsvSource({
        "5e-5, 0.00005",
        "700, 700",
        "18262.5, 18262.5",
        "0.010950000000000001, 0.01095",
        "6512345.67, 6512345.67",
        "-0.001, -0.001",
        "0, 0",
        "-0.0, 0",
        "1e-9, 1e-9",
        "2.5e-12, 2.5e-12",
        "1e15, 1e15",
        "-3e20, -3e20",
        "1e-7, 0.0000001",
        "123456789012, 123456789012",
        "NaN, NaN",
        "Infinity, Infinity",
        "4.9e-324, 4.9e-324"
    })
    void givenNumbersKeepTheirDigits(double value, String written) {
        assertEquals(written, PlainNumber.of(value));
    }

    @ParameterizedTest
    @CsvSource({
        "0.034567891, 0.03457",
        "18262.7, 18263",
        "0.5, 0.5",
        "123.456, 123.5",
        "1.23456e-9, 1.235e-9",
        "6512345.67, 6512346",
        "-7.00004, -7",
        "NaN, NaN"
    })
    void computedNumbersKeepFour(double value, String written) {
        assertEquals(written, PlainNumber.about(value));
    }
}

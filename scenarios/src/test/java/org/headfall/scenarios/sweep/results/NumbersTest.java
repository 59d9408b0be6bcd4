package org.headfall.scenarios.sweep.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "2.527421E-4, 0.0002527, 0.0002527421",
        "-1.0E-6, -1e-6, -1e-6",
        "5.468494E-7, 5.468e-7, 5.468494e-7",
        "1234567.8, 1.235e6, 1.2345678e6",
        "12346.0, 12350, 12346",
        "99999.0, 100000, 99999",
        "NaN, –, –",
    })
    void writesNumbersWhole(double value, String words, String exact) {
        assertEquals(words, Numbers.words(value));
        if (Double.isFinite(value)) {
            assertEquals(exact, Numbers.exact(value));
        }
    }
}

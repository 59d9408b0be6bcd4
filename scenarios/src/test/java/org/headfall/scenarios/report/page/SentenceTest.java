package org.headfall.scenarios.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SentenceTest {

    private static String height(double value, double error) {
        return Sentence.of("").and(Quantity.HEIGHT, value, error).text().replace('\u00a0', ' ');
    }

    @Test
    void anErrorIsShownAsItIs() {
        assertEquals("3.09 m ± 0.004 m", height(3.089, 0.0041));
        assertEquals("3.09 m ± 0.120 m", height(3.089, 0.12));
    }

    @Test
    void anErrorTooSmallToShowIsSaidToBeUnderTheSmallestThatIs() {
        assertEquals("3.09 m ± under 0.001 m", height(3.089, 0.0002));
    }

    @Test
    void whatIsExactHasNoError() {
        assertEquals("4500.00 m", height(4500, 0).replace("\u202f", ""));
    }

    @Test
    void anUnknownErrorIsNotTakenForNone() {
        assertEquals("3.09 m (numerical error not estimated)", height(3.089, Double.NaN));
    }
}

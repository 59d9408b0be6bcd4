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

    /** Flows are kept in m3/d and volumes in m3: 1 L/s is 86.4 m3/d, 1 ML is 1000 m3. */
    @Test
    void anErrorIsInTheUnitOfItsValue() {
        Sentence flow = Sentence.of("").and(Quantity.FLOW, 864, 8.64);
        assertEquals("10.00 L/s ± 0.100 L/s", flow.text().replace(' ', ' '));
        assertEquals(
                new Sentence.Part("0.100 L/s", "FLOW", "8.64", true),
                flow.parts().get(4));
        assertEquals(
                "10.00 L/s ± under 0.001 L/s",
                Sentence.of("").and(Quantity.FLOW, 864, 0.05).text().replace(' ', ' '));
        assertEquals(
                "2.5 ML ± 0.10 ML",
                Sentence.of("").and(Quantity.VOLUME, 2500, 100).text().replace(' ', ' '));
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

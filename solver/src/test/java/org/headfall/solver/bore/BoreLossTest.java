package org.headfall.solver.bore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Well loss, skin and short screens. */
class BoreLossTest {

    /**
     * Step test of Clark (1977) as in Kruseman and de Ridder (1990, ch. 14), from memory: B 3.26e-3 d/m², C 1.45e-7 d²/m⁵,
     * so 20.01 m at 5,019 m³/d. B of the test holds the aquifer's part.
     */
    @Test
    void jacobsLoss() {
        WellLoss loss = new WellLoss(3.26e-3, 1.45e-7);
        assertEquals(20.01, loss.at(5019), 0.01);
        assertEquals(3.26e-3 + 2 * 1.45e-7 * 5019, loss.slope(5019), 1e-15);
    }

    @Test
    void rorabaughsLossWithAnyExponent() {
        WellLoss loss = new WellLoss(1e-3, 2e-9, 2.6);
        assertEquals(1 + 2e-9 * Math.pow(1000, 2.6), loss.at(1000), 1e-12);
        assertEquals((loss.at(1001) - loss.at(999)) / 2, loss.slope(1000), 1e-9);
        assertEquals(-loss.at(1000), loss.at(-1000));
        assertEquals(new WellLoss(1e-4, 1e-7).at(700), new WellLoss(1e-4, 1e-7, 2).at(700));
    }

    @Test
    void impossibleLossesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new WellLoss(-1, 0));
        assertThrows(IllegalArgumentException.class, () -> new WellLoss(0, Double.NaN));
        var thrown = assertThrows(IllegalArgumentException.class, () -> new WellLoss(0, 0, 0.9));
        assertTrue(thrown.getMessage().contains("0.9"), thrown.getMessage());
    }

    /** Skin of van Everdingen (1953): {@code skin Q / (2 pi T)}; 3 x 1,000 / (2 pi 150) = 3.183 m. */
    @Test
    void skinIsALossThatDependsOnTransmissivity() {
        Bore bore = new Bore("a", 0, 0, 0.1, new WellLoss(0, 1e-7), 3, WaterColumn.REFERENCE, List.of());
        assertEquals(3.183 + 0.1, bore.lossIn(150).at(1000), 5e-4);
        assertThrows(
                IllegalArgumentException.class,
                () -> new Bore("a", 0, 0, 0.1, WellLoss.NONE, -1, WaterColumn.REFERENCE, List.of()));
    }

    /**
     * Screen at the top or bottom of the aquifer, with p its part of the thickness and {@code r = r_w/b sqrt(Kz/Kr)}.
     *
     * <p>Papatzacos (1987, SPE Reservoir Engineering 2, 227-234): {@code (1/p - 1) ln(pi/(2 r)) + 1/p ln(p/(2 + p)
     * sqrt((A - 1)/(B - 1)))}, A = 4/p, B = 4/(3 p) (from memory). His screen has one head everywhere, ours the mean of
     * evenly spread inflow: within 2 % and 0.1.
     *
     * <p>Brons and Marting (1961, J. Petroleum Technology 13, 172-174): {@code (1/p - 1)(ln(1/r) - G)}, G = 2.948 - 7.363 p
     * + 11.45 p² - 4.675 p³ (from memory), a fit to a graph: within 3 % and 0.1.
     */
    @ParameterizedTest
    @CsvSource({"0.1, 1", "0.25, 1", "0.5, 1", "0.75, 1", "0.9, 1", "0.25, 0.1", "0.5, 0.01", "0.75, 0.04"})
    void shortScreenAtOneEndIsThatOfPapatzacosAndOfBronsAndMarting(double part, double ratio) {
        double thickness = 100;
        double radius = 0.1;
        double r = radius / thickness * Math.sqrt(ratio);
        double papatzacos = (1 / part - 1) * Math.log(Math.PI / (2 * r))
                + Math.log(part / (2 + part) * Math.sqrt((4 / part - 1) / (4 / (3 * part) - 1))) / part;
        double g = 2.948 - 7.363 * part + 11.45 * part * part - 4.675 * part * part * part;
        double brons = (1 / part - 1) * (-Math.log(r) - g);
        double skin = new PartialPenetration(0, part, thickness, ratio).skin(radius);
        assertEquals(papatzacos, skin, 0.02 * papatzacos + 0.1);
        assertEquals(brons, skin, 0.03 * brons + 0.1);
        assertEquals(skin, new PartialPenetration(1 - part, 1, thickness, ratio).skin(radius), 1e-3 * skin);
    }

    /**
     * The same drawdown by images (Muskat 1937, The Flow of Homogeneous Fluids, ch. 5): the screen mirrored at top and
     * bottom of the aquifer without end, each image with the potential of a line of even strength, less that of a full line.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.3, 1", "0.2, 0.7, 0.1", "0.5, 0.6, 0.3", "0.05, 0.95, 0.02"})
    void shortScreenIsThatOfImages(double top, double bottom, double ratio) {
        double radius = 0.1 / 50 * Math.sqrt(ratio);
        int images = 2000;
        double far = 2 * images + 1;
        int places = 400;
        double sum = 0;
        for (int i = 0; i < places; i++) {
            double z = top + (bottom - top) * (i + 0.5) / places;
            double lines = 0;
            for (int n = -images; n <= images; n++) {
                lines += line(2 * n + top - z, 2 * n + bottom - z, radius)
                        + line(2 * n - bottom - z, 2 * n - top - z, radius);
            }
            sum += (lines / (bottom - top) - line(-far - z, far - z, radius)) / 2;
        }
        assertEquals(sum / places, new PartialPenetration(top, bottom, 50, ratio).skin(0.1), 2e-3 * sum / places);
    }

    private static double asinh(double x) {
        return Math.signum(x) * Math.log(Math.abs(x) + Math.sqrt(x * x + 1));
    }

    private static double line(double from, double to, double radius) {
        return asinh(to / radius) - asinh(from / radius);
    }

    /** Exact by symmetry: a screen in the middle is a screen at the end of either half of the aquifer. */
    @Test
    void aScreenInTheMiddleIsOneAtTheEndOfHalfTheAquifer() {
        double whole = new PartialPenetration(0.3, 0.7, 80, 0.2).skin(0.1);
        double half = new PartialPenetration(0, 0.4, 40, 0.2).skin(0.1);
        assertEquals(half, whole, 1e-4 * half);
    }

    @Test
    void aFullScreenHasNoSkin() {
        assertEquals(0, new PartialPenetration(0, 1, 50, 0.1).skin(0.1), 1e-9);
    }

    @Test
    void screensBeyondTheAquiferAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new PartialPenetration(-0.1, 0.5, 50, 1));
        assertThrows(IllegalArgumentException.class, () -> new PartialPenetration(0.5, 0.5, 50, 1));
        assertThrows(IllegalArgumentException.class, () -> new PartialPenetration(0, 1.1, 50, 1));
        assertThrows(IllegalArgumentException.class, () -> new PartialPenetration(0, 1, 50, 0));
    }
}

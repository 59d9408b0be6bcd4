package org.headfall.scenarios.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** By hand; the bounds are common practice, no source. */
class ShareBaseTest {

    private static ShareBase ofDrawdown(double whole, double... parts) {
        return ShareBase.of(ShareBase.LEAST_DRAWDOWN, whole, parts);
    }

    @Test
    void partsOfOneSignAreSharesOfTheirSumWhateverTheSign() {
        assertEquals(25, ofDrawdown(4, 1, 3).percent(1).orElseThrow(), 1e-12);
        assertEquals(25, ofDrawdown(-4, -1, -3).percent(-1).orElseThrow(), 1e-12);
    }

    /** A bore that flows by itself gives 2.64 m less while others take 3.02 m: 0.38 m are left, of which others are 795 %. */
    @Test
    void ofPartsThatMostlyCancelThereAreNoShares() {
        ShareBase base = ofDrawdown(0.38, -2.64, 3.02);
        assertEquals(ShareBase.Sense.CANCELLED, base.sense());
        assertEquals(OptionalDouble.empty(), base.percent(3.02));
    }

    @Test
    void aPartAgainstTheOthersMayComeToAThirdOfThem() {
        assertEquals(150, ofDrawdown(1, 1.5, -0.5).percent(1.5).orElseThrow(), 1e-9);
        assertEquals(ShareBase.Sense.CANCELLED, ofDrawdown(0.99, 1.5, -0.51).sense());
    }

    @Test
    void ofNextToNothingThereAreNoShares() {
        assertEquals(ShareBase.Sense.NEXT_TO_NOTHING, ofDrawdown(0.009, 0.009).sense());
        assertEquals(ShareBase.Sense.NEXT_TO_NOTHING, ofDrawdown(0).sense());
        assertEquals(ShareBase.Sense.NEXT_TO_NOTHING, ofDrawdown(Double.NaN, 1).sense());
        assertEquals(ShareBase.Sense.SOUND, ofDrawdown(-0.01, -0.01).sense());
    }

    @Test
    void noShareGoesBeyondOneAndAHalf() {
        Random random = new Random(20_260_703);
        int told = 0;
        for (int trial = 0; trial < 2000; trial++) {
            double[] parts = random.doubles(1 + random.nextInt(6), -1, 2).toArray();
            double whole = java.util.Arrays.stream(parts).sum();
            for (double part : parts) {
                OptionalDouble share = ofDrawdown(whole, parts).percent(part);
                if (share.isPresent()) {
                    told++;
                    assertTrue(Math.abs(share.getAsDouble()) <= 150 + 1e-6, () -> "share " + share);
                }
            }
        }
        assertTrue(told > 1000, "shares told: " + told);
    }
}

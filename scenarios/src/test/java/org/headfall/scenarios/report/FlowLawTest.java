package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.headfall.scenarios.report.content.WhatIf;
import org.junit.jupiter.api.Test;

class FlowLawTest {

    private static final double[] DISCHARGE = {0, 100, 250, 400, 900, 0};

    @Test
    void findsTheLossOfJacob() {
        double[] head =
                Arrays.stream(DISCHARGE).map(q -> 3e-3 * q + 2e-6 * q * q).toArray();
        head[0] = Double.NaN;
        head[5] = -7;
        WhatIf.Loss law = FlowLaw.fitted(DISCHARGE, head).orElseThrow();
        assertEquals(3e-3, law.linear(), 1e-12);
        assertEquals(2e-6, law.quadratic(), 1e-15);
    }

    @Test
    void oneRateOnlyGivesALossThroughIt() {
        WhatIf.Loss law = FlowLaw.fitted(new double[] {500, 500, 0}, new double[] {2, 2, 0})
                .orElseThrow();
        assertEquals(2, law.linear() * 500 + law.quadratic() * 500 * 500, 1e-12);
    }

    /** A bore that flows evenly over the years: what the rule leaves open, a tenth of a millimetre, decides the parts. */
    @Test
    void dischargesThatHardlyDifferGiveNoNegativePart() {
        double[] discharge = {750, 748, 746};
        double[] head = Arrays.stream(discharge)
                .map(q -> 2.7e-5 * q * q + (q == 748 ? 1e-4 : q == 746 ? -1e-4 : 0))
                .toArray();
        WhatIf.Loss law = FlowLaw.fitted(discharge, head).orElseThrow();
        assertTrue(law.linear() >= 0 && law.quadratic() >= 0, law.toString());
        assertEquals(head[0], law.linear() * 750 + law.quadratic() * 750 * 750, 3e-4);
    }

    @Test
    void whatFollowsNoSuchLawHasNone() {
        double[] head = Arrays.stream(DISCHARGE).map(q -> Math.sqrt(q)).toArray();
        assertTrue(FlowLaw.fitted(DISCHARGE, head).isEmpty());
        assertTrue(FlowLaw.fitted(new double[] {0, 0}, new double[] {1, 2}).isEmpty());
    }
}

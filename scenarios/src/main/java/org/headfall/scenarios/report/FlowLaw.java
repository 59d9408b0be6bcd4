package org.headfall.scenarios.report;

import java.util.Arrays;
import java.util.Optional;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.WhatIf;

/**
 * How much head a discharge takes, {@code linear Q + quadratic Q²}, neither part negative, found from a recorded series by
 * least squares. The series is exact, so what the law misses is what it cannot say: then there is none.
 */
final class FlowLaw {

    /** Largest miss that counts as none (m). */
    private static final double CLOSE = 0.01;

    private static final double NOTHING = 1e-3;

    private FlowLaw() {}

    /**
     * Law of what flows by itself.
     *
     * @param series what it recorded
     * @param outlet head of the aquifer from which it flows (m above datum)
     * @return the law, empty if nothing flowed or no law of this form comes close to all records
     */
    static Optional<WhatIf.Loss> of(StationSeries series, double outlet) {
        double[] aboveOutlet =
                Arrays.stream(series.head()).map(head -> head - outlet).toArray();
        return fitted(series.discharge(), aboveOutlet);
    }

    /**
     * Law through recorded pairs; those without discharge are left out.
     *
     * @param discharge discharges (m³/d)
     * @param head head that each of them took (m)
     * @return the law, empty if nothing flowed or no law of this form comes close to all pairs
     */
    static Optional<WhatIf.Loss> fitted(double[] discharge, double[] head) {
        double qq = 0;
        double qqq = 0;
        double qqqq = 0;
        double hq = 0;
        double hqq = 0;
        for (int i = 0; i < discharge.length; i++) {
            double q = discharge[i];
            if (q > NOTHING && Double.isFinite(head[i])) {
                qq += q * q;
                qqq += q * q * q;
                qqqq += q * q * q * q;
                hq += head[i] * q;
                hqq += head[i] * q * q;
            }
        }
        if (qq == 0) {
            return Optional.empty();
        }
        double determinant = qq * qqqq - qqq * qqq;
        boolean ratesDiffer = determinant > 1e-9 * qq * qqqq;
        WhatIf.Loss law = notNegative(
                ratesDiffer ? (hq * qqqq - hqq * qqq) / determinant : 0,
                ratesDiffer ? (hqq * qq - hq * qqq) / determinant : hqq / qqqq,
                hq / qq,
                hqq / qqqq);
        return meets(law, discharge, head) ? Optional.of(law) : Optional.empty();
    }

    /**
     * Where discharges hardly differ the two parts can hardly be told apart, and one of them comes out negative: the other
     * alone then says as much.
     */
    private static WhatIf.Loss notNegative(double linear, double quadratic, double linearAlone, double quadraticAlone) {
        if (linear < 0) {
            return new WhatIf.Loss(0, Math.max(0, quadraticAlone));
        }
        return quadratic < 0 ? new WhatIf.Loss(Math.max(0, linearAlone), 0) : new WhatIf.Loss(linear, quadratic);
    }

    private static boolean meets(WhatIf.Loss law, double[] discharge, double[] head) {
        for (int i = 0; i < discharge.length; i++) {
            double q = discharge[i];
            double lost = law.linear() * q + law.quadratic() * q * q;
            if (q > NOTHING && Math.abs(lost - head[i]) > CLOSE) {
                return false;
            }
        }
        return true;
    }
}

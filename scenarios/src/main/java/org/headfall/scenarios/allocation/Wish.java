package org.headfall.scenarios.allocation;

import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.solver.allocation.Row;

/**
 * Something wanted of rates besides the limits, which does not give way to them.
 *
 * @param kind what it is
 * @param name the same in words
 * @param row its row
 */
record Wish(Kind kind, String name, Row row) {

    /** Kinds of wishes, with the units in which documents state them. */
    enum Kind {
        /** A rate of a holder; its row is in m³/d. */
        HOLDER_MINIMUM("L/s", DischargeUnit.LITRES_PER_SECOND.of(1)),
        /** The total of all; its row is in ML/yr. */
        TOTAL("ML/yr", 1),
        /** The yield of a holder who comes first; its row is in ML/yr. */
        SENIOR_YIELD("ML/yr", 1);

        private final String unit;
        private final double factor;

        Kind(String unit, double factor) {
            this.unit = unit;
            this.factor = factor;
        }
    }

    static Wish of(Kind kind, String name, double[] coefficients, double bound) {
        return new Wish(kind, name, new Row(coefficients, bound, Double.POSITIVE_INFINITY));
    }

    /** The wish with what can be had of it if its bound grows by an amount. */
    ContradictionException.Wish givingWay(double amount) {
        return new ContradictionException.Wish(
                name, kind.factor * Math.abs(row.bound()), kind.factor * Math.abs(row.bound() + amount), kind.unit);
    }
}

package org.headfall.scenarios.allocation;

import org.headfall.solver.allocation.Row;

/**
 * Something wanted of rates besides the limits, which does not give way to them.
 *
 * @param name what it is, in words
 * @param row its row
 * @param unit unit in which it is spoken of
 * @param ofOne what 1 of the unit of the row is in that unit
 */
record Wish(String name, Row row, String unit, double ofOne) {

    static Wish of(String name, double[] coefficients, double bound, String unit, double ofOne) {
        return new Wish(name, new Row(coefficients, bound, Double.POSITIVE_INFINITY), unit, ofOne);
    }

    /** A row that may give way, weighed by its share of what is wanted, as wishes are in several units. */
    Row givingWayByItsShare() {
        double wanted = Math.abs(row.bound());
        return new Row(row.coefficients(), row.bound(), wanted > 0 ? 1 / wanted : 1);
    }

    /** The wish with what can be had of it if its bound grows by an amount. */
    ContradictionException.Wish givingWay(double amount) {
        return new ContradictionException.Wish(
                name, ofOne * Math.abs(row.bound()), ofOne * Math.abs(row.bound() + amount), unit);
    }
}

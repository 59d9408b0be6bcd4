package org.headfall.scenarios.quantity;

/** Units of discharge in which results are stated beside m³/d, in which everything is computed. */
public enum DischargeUnit {
    /** L/s. */
    LITRES_PER_SECOND(86.4),
    /** ML in a year of 365.25 days. */
    MEGALITRES_PER_YEAR(1000 / 365.25);

    private final double cubicMetresPerDay;

    DischargeUnit(double cubicMetresPerDay) {
        this.cubicMetresPerDay = cubicMetresPerDay;
    }

    /**
     * A discharge that is given in this unit, as everything is computed.
     *
     * @param value in this unit
     * @return discharge (m³/d)
     */
    public double toCubicMetresPerDay(double value) {
        return value * cubicMetresPerDay;
    }

    /**
     * A discharge in this unit.
     *
     * @param discharge discharge (m³/d)
     */
    public double of(double discharge) {
        return discharge / cubicMetresPerDay;
    }

    /**
     * Something that counts for each m³/d, for each of this unit: a price, or head. A discharge is turned round by {@link
     * #toCubicMetresPerDay}.
     *
     * @param value such as metres per m³/d
     */
    public double per(double value) {
        return value * cubicMetresPerDay;
    }
}

package org.headfall.scenarios.quantity;

/** Energy of lifting water: rho g h, for water of 20 °C at 998.2 kg/m³ (Kell 1975) and g of 9.80665 m/s². */
public final class LiftEnergy {

    /** 1 kWh is 3.6e6 J. */
    private static final double KILOWATT_HOURS_PER_MEGALITRE_AND_METRE = 998.2 * 9.80665 * 1000 / 3.6e6;

    private LiftEnergy() {}

    /**
     * Energy for each megalitre.
     *
     * @param lift how high it is lifted (m)
     * @param efficiency share of the energy that lifts (-)
     * @return energy (kWh/ML)
     */
    public static double perMegalitre(double lift, double efficiency) {
        return KILOWATT_HOURS_PER_MEGALITRE_AND_METRE * lift / efficiency;
    }
}

package org.headfall.scenarios.quantity;

/** Units of volume in which results are stated beside m³, in which everything is computed. */
public enum VolumeUnit {
    /** ML. */
    MEGALITRES(1000);

    private final double cubicMetres;

    VolumeUnit(double cubicMetres) {
        this.cubicMetres = cubicMetres;
    }

    /**
     * A volume in this unit.
     *
     * @param volume volume (m³)
     */
    public double of(double volume) {
        return volume / cubicMetres;
    }
}

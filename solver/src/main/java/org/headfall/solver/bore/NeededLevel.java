package org.headfall.solver.bore;

/** Water level that must stand in a bore for it to give a discharge; it never falls as the discharge grows. */
public interface NeededLevel {

    /**
     * The level.
     *
     * @param discharge discharge (m³/d), not negative
     * @return level of the water in the bore (m above datum)
     */
    double at(double discharge);

    /**
     * Rise of the level with discharge.
     *
     * @param discharge discharge (m³/d), not negative
     * @return slope (d/m²), not negative; at a kink, that on either side
     */
    double slope(double discharge);

    /** A level that does not depend on discharge (m above datum). */
    static NeededLevel constant(double level) {
        return new NeededLevel() {
            @Override
            public double at(double discharge) {
                return level;
            }

            @Override
            public double slope(double discharge) {
                return 0;
            }
        };
    }
}

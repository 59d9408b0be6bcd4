package org.headfall.scenarios.scenario;

/** The coordinate reference system of all positions of a scenario. */
public sealed interface CoordinateSystem {
    /**
     * A projected system of the EPSG register with metres as unit.
     *
     * @param code number in the register, such as 7854
     */
    record Projected(int code) implements CoordinateSystem {
        @Override
        public String toString() {
            return "EPSG:" + code;
        }
    }

    /** Metres east and north of some point; positions cannot be put on a map. */
    record Local() implements CoordinateSystem {
        @Override
        public String toString() {
            return "local";
        }
    }
}

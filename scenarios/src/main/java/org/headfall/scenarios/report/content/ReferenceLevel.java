package org.headfall.scenarios.report.content;

/**
 * A level to compare a water level with.
 *
 * @param kind what it is the level of
 * @param label what it is, for a reader: "Outlet", or a limit by its name
 * @param level level (m above datum)
 */
public record ReferenceLevel(Kind kind, String label, double level) {

    /** What a level is the level of. */
    public enum Kind {
        /** The ground. */
        GROUND,
        /** The outlet of the headworks or of a spring. */
        OUTLET,
        /** The top of the aquifer. */
        AQUIFER_TOP,
        /** The intake of the pump. */
        PUMP_INTAKE,
        /** The level at which pumping is cut back. */
        LOWEST_LEVEL,
        /** A limit. */
        LIMIT
    }
}

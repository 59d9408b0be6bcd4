package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import org.headfall.scenarios.problem.Place;

/**
 * A measured head at a bore, spring or protected point.
 *
 * @param name name of the place
 * @param date when it was measured
 * @param reading what was read off
 * @param place where it is given
 */
public record MeasurementSpecification(String name, LocalDate date, Reading reading, Place place) {

    /** What was read off. */
    public sealed interface Reading {}

    /**
     * Level of the water at rest, as if it were cold.
     *
     * @param head head (m above datum)
     */
    public record Head(double head) implements Reading {}

    /**
     * A gauge on the shut bore.
     *
     * @param pressure gauge pressure (kPa)
     * @param level level of the gauge (m above datum)
     */
    public record Gauge(double pressure, double level) implements Reading {}
}

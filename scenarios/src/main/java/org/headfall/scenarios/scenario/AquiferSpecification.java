package org.headfall.scenarios.scenario;

import java.util.Optional;
import org.headfall.scenarios.problem.Place;

/**
 * The aquifer.
 *
 * @param transmissivity transmissivity along both axes
 * @param storativity storativity (-)
 * @param top top of the aquifer (m above datum)
 * @param bottom bottom of the aquifer (m above datum)
 * @param within where the aquifer is, if it does not fill the whole grid
 * @param place where the document gives it
 * @param bottomPlace where it gives the bottom
 */
public record AquiferSpecification(
        Transmissivity transmissivity,
        Field storativity,
        Field top,
        Field bottom,
        Optional<Area> within,
        Place place,
        Place bottomPlace) {
    /** Transmissivity along the axes of the grid. */
    public sealed interface Transmissivity {}

    /**
     * The same in both directions but for a constant ratio.
     *
     * @param mean geometric mean of the transmissivities along x and y (m2/d)
     * @param xOverY transmissivity along x divided by that along y (-), 1 if the aquifer is isotropic
     */
    public record WithRatio(Field mean, double xOverY) implements Transmissivity {}

    /**
     * Given for each axis.
     *
     * @param x transmissivity along x (m2/d)
     * @param y transmissivity along y (m2/d)
     */
    public record AlongAxes(Field x, Field y) implements Transmissivity {}
}

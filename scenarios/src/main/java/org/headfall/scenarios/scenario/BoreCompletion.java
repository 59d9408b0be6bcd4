package org.headfall.scenarios.scenario;

import java.util.Optional;

/**
 * How a bore is built, as far as it matters for what it loses.
 *
 * @param skin skin of the wall (-)
 * @param screen where the screen is, if given
 * @param casing what water rises through when the bore flows by itself, if its friction counts
 * @param temperature temperature of the water in the bore, if given
 */
public record BoreCompletion(
        double skin,
        Optional<Screen> screen,
        Optional<PipeSpecification> casing,
        Optional<WaterTemperature> temperature) {

    /** Nothing is known. */
    public static final BoreCompletion UNKNOWN =
            new BoreCompletion(0, Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * A screen.
     *
     * @param top its upper end (m above datum)
     * @param bottom its lower end (m above datum)
     * @param verticalOverHorizontal vertical over horizontal conductivity of the aquifer (-), if what a screen shorter
     *     than the aquifer costs is to be computed
     */
    public record Screen(double top, double bottom, Optional<Double> verticalOverHorizontal) {
        /** Middle of the screen (m above datum). */
        public double middle() {
            return (top + bottom) / 2;
        }
    }

    /**
     * A casing or riser.
     *
     * @param diameter inner diameter (m)
     * @param length length (m)
     * @param roughness roughness of the wall (m)
     */
    public record PipeSpecification(double diameter, double length, double roughness) {}

    /**
     * Temperatures of the water that fills a bore.
     *
     * @param wellhead at the top (degC)
     * @param screen at the screen (degC)
     */
    public record WaterTemperature(double wellhead, double screen) {}
}

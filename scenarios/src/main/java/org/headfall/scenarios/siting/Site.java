package org.headfall.scenarios.siting;

import java.util.List;

/**
 * A chosen site, at the centre of its cell.
 *
 * @param number from 1, in the order of choice
 * @param cell its cell
 * @param x easting (m)
 * @param y northing (m)
 * @param rate rate of the bore (m³/d)
 * @param largestRate largest rate that the site allows, the sites before it counted (m³/d)
 * @param ruling what decides the largest rate
 * @param level lowest level in the bore, all sites counted (m above datum)
 * @param lift greatest lift (m)
 * @param energy energy of that lift (kWh/ML)
 * @param effects what it takes of each limit on the day on which least is left
 */
public record Site(
        int number,
        int cell,
        double x,
        double y,
        double rate,
        double largestRate,
        String ruling,
        double level,
        double lift,
        double energy,
        List<Effect> effects) {

    /** Copies the list. */
    public Site {
        effects = List.copyOf(effects);
    }

    /**
     * Effect on a limit.
     *
     * @param limit the limit and its place
     * @param unit unit of the values
     * @param day the day on which least is left, all sites counted (d)
     * @param effect change of the limited value by this site then
     * @param left what is left then
     */
    public record Effect(String limit, String unit, double day, double effect, double left) {}

    /** Name of its bore. */
    public String name() {
        return "new site " + number;
    }
}

package org.headfall.scenarios.report.content;

import java.util.List;

/**
 * Levels and flow of one site over time. All arrays have one length; an empty one was not recorded.
 *
 * @param site name of the site
 * @param days days since the start, ascending
 * @param aquiferHead head in the aquifer at the bore wall or spring (m above datum)
 * @param waterLevel water level in the bore, well loss included (m above datum)
 * @param flow discharge (m³/d)
 * @param references levels to draw beside it
 * @param measured measured levels, empty if there are none
 */
@SuppressWarnings("ArrayRecordComponent") // large, owned by the content
public record Hydrograph(
        String site,
        double[] days,
        float[] aquiferHead,
        float[] waterLevel,
        float[] flow,
        List<ReferenceLevel> references,
        List<Measurement> measured) {

    /** Checks the lengths. */
    public Hydrograph {
        references = List.copyOf(references);
        measured = List.copyOf(measured);
        requireLength(site, "heads", aquiferHead, days.length);
        requireLength(site, "water levels", waterLevel, days.length);
        requireLength(site, "flows", flow, days.length);
    }

    /**
     * A measured level.
     *
     * @param day when it was measured (d since the start)
     * @param level the level (m above datum)
     */
    public record Measurement(double day, double level) {}

    private static void requireLength(String site, String name, float[] values, int length) {
        if (values.length != 0 && values.length != length) {
            throw new IllegalArgumentException(
                    "hydrograph of '" + site + "': expected " + length + " " + name + ", found " + values.length);
        }
    }
}

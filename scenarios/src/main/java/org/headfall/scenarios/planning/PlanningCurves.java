package org.headfall.scenarios.planning;

import java.util.List;

/**
 * Curves over the spacing of bores, one a layout, number of bores and measure; and over their number, each at its economic
 * spacing.
 *
 * @param spacings distances of neighbours (m), increasing
 * @param measures names of what the curves show, with units; the first is that whose least is marked
 * @param curves the curves
 */
@SuppressWarnings("ArrayRecordComponent") // handed on to the page, never compared
public record PlanningCurves(double[] spacings, List<String> measures, List<Curve> curves) implements PlanningView {

    /** Copies the lists. */
    public PlanningCurves {
        measures = List.copyOf(measures);
        curves = List.copyOf(curves);
    }

    /**
     * The curves of one layout and number of bores.
     *
     * @param layout the layout in words
     * @param bores number of bores
     * @param values for each measure a value a spacing
     * @param bestSpacing the economic spacing (m)
     * @param best for each measure its value there
     * @param atEnd whether it lies at an end of the range
     */
    public record Curve(
            String layout, int bores, List<double[]> values, double bestSpacing, double[] best, boolean atEnd) {

        /** Copies the list. */
        public Curve {
            values = List.copyOf(values);
        }
    }
}

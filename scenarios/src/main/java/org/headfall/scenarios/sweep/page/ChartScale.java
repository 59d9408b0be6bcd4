package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Turns values into places along one axis of a chart.
 *
 * @param least value at the beginning
 * @param most value at the end, more than the least
 * @param from place of the beginning
 * @param to place of the end
 */
record ChartScale(double least, double most, double from, double to) {

    private static final double MARGIN = 0.04;
    private static final double ALONE = 0.5;
    private static final int TICKS = 6;

    /** A scale on which all values find room. */
    static ChartScale of(double[] values, double from, double to) {
        double low = Arrays.stream(values).filter(Double::isFinite).min().orElse(0);
        double high = Arrays.stream(values).filter(Double::isFinite).max().orElse(1);
        double margin = high > low ? MARGIN * (high - low) : Math.max(ALONE, Math.abs(high) * MARGIN);
        return new ChartScale(low - margin, high + margin, from, to);
    }

    double place(double value) {
        return from + (value - least) / (most - least) * (to - from);
    }

    /** Round values along the axis: 1, 2 or 5 times a power of ten apart. */
    List<Double> ticks() {
        double step = Math.pow(10, Math.floor(Math.log10((most - least) / TICKS)));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if ((most - least) / (step * factor) <= TICKS) {
                step *= factor;
                break;
            }
        }
        List<Double> ticks = new ArrayList<>();
        for (double k = Math.ceil(least / step); k * step <= most; k++) {
            ticks.add(k * step);
        }
        return ticks;
    }
}

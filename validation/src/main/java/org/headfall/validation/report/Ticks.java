package org.headfall.validation.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Plot;

/**
 * Range of an axis and where its ticks stand.
 *
 * @param scale the axis
 * @param low value at its beginning
 * @param high value at its end
 */
record Ticks(Plot.Scale scale, double low, double high) {

    private static final int WANTED = 6;
    private static final int FEW_DECADES = 2;
    private static final int MOST_DECADES = 8;
    private static final double DECADES_SHOWN = 5;

    /** An axis that holds values: whole steps where it is linear, at most the five or six upper decades where logarithmic. */
    static Ticks around(Plot.Scale scale, Collection<Double> values) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            if (Double.isFinite(value) && (!scale.logarithmic() || value > 0)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        if (low > high) {
            return new Ticks(scale, scale.logarithmic() ? 1 : 0, scale.logarithmic() ? 10 : 1);
        }
        if (scale.logarithmic()) {
            double smallest = Math.max(low, high * Math.pow(10, -DECADES_SHOWN));
            double first = Math.pow(10, Math.floor(Math.log10(smallest) + 1e-9));
            double last = Math.pow(10, Math.ceil(Math.log10(high) - 1e-9));
            return new Ticks(scale, first, last > first ? last : 10 * first);
        }
        double step = step(low, high);
        double first = step * Math.floor(low / step + 1e-9);
        double last = step * Math.ceil(high / step - 1e-9);
        return new Ticks(scale, first, last > first ? last : first + step);
    }

    private static double step(double low, double high) {
        double span = high > low ? high - low : Math.max(Math.abs(high), 1);
        double rough = span / WANTED;
        double decade = Math.pow(10, Math.floor(Math.log10(rough)));
        double digit = rough / decade;
        return decade * (digit > 5 ? 10 : digit > 2 ? 5 : digit > 1 ? 2 : 1);
    }

    /** Place of a value along the axis, 0 at its beginning and 1 at its end; not a number where it cannot be shown. */
    double place(double value) {
        if (scale.logarithmic()) {
            return value >= low * (1 - 1e-9) ? Math.log(value / low) / Math.log(high / low) : Double.NaN;
        }
        return (value - low) / (high - low);
    }

    /** Values at which ticks stand. */
    List<Double> values() {
        List<Double> ticks = new ArrayList<>();
        if (scale.logarithmic()) {
            int decades = (int) Math.rint(Math.log10(high / low));
            int stride = decades > MOST_DECADES ? 2 : 1;
            for (int n = 0; n <= decades; n += stride) {
                double decade = low * Math.pow(10, n);
                ticks.add(decade);
                if (decades <= FEW_DECADES && n < decades) {
                    ticks.add(2 * decade);
                    ticks.add(5 * decade);
                }
            }
        } else {
            double step = step(low, high);
            for (int n = 0; low + n * step <= high + 1e-9 * step; n++) {
                ticks.add(low + n * step);
            }
        }
        return ticks;
    }

    /** A tick's value as text. */
    String label(double value) {
        double size = Math.abs(value);
        if (scale.logarithmic() && (size >= 1e5 || size < 1e-3)) {
            return "1e" + Math.round(Math.log10(size));
        }
        double clean = size < 1e-9 * Math.max(Math.abs(low), Math.abs(high)) ? 0 : value;
        return Figures.significant(clean, 4);
    }
}

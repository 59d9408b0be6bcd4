package org.headfall.scenarios.report.picture;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Classes of drawdown with their colours: white about zero, ochre where heads fell, blue where they rose, as on the page
 * of the report.
 *
 * @param limits limits between the classes (m), ascending
 * @param colours colour of each class, one more than there are limits
 */
record ColourClasses(List<Double> limits, List<Color> colours) {

    private static final int[] OCHRES = {0xf3ece2, 0xeccfa6, 0xe0ab6b, 0xd08a4a, 0xb56d30, 0x92501c};
    private static final int[] BLUES = {0xe9eef2, 0xb9d3e2, 0x83b3d0, 0x4b8fb8, 0x24699a, 0x0d4474};
    private static final Color NEITHER = new Color(250, 249, 245);
    private static final double MOST_CLASSES = 14;

    /** Copies the lists. */
    ColourClasses {
        limits = List.copyOf(limits);
        colours = List.copyOf(colours);
    }

    /** Classes over the range of some drawdowns. */
    static ColourClasses ofDrawdown(double low, double high) {
        double reach = Math.max(Math.max(high, -low), 1e-3);
        double step = niceStep(reach / MOST_CLASSES);
        TreeSet<Double> limits = new TreeSet<>();
        for (double share : new double[] {0.1, 0.5}) {
            limits.addAll(List.of(share * step, -share * step));
        }
        for (int k = 1; k * step < reach; k++) {
            limits.addAll(List.of(k * step, -k * step));
        }
        limits.removeIf(limit -> limit <= low || limit >= high);
        List<Double> within = new ArrayList<>(limits);
        return new ColourClasses(within, colours(within));
    }

    /** The next larger of 1, 2, 2.5, 5 times a power of ten. */
    private static double niceStep(double size) {
        double power = Math.pow(10, Math.floor(Math.log10(size)));
        return DoubleStream.of(power, 2 * power, 2.5 * power, 5 * power)
                .filter(step -> step >= size)
                .findFirst()
                .orElse(10 * power);
    }

    private static List<Color> colours(List<Double> limits) {
        int rises = (int) limits.stream().filter(limit -> limit < 0).count();
        int falls = limits.size() - rises;
        return IntStream.rangeClosed(0, limits.size())
                .mapToObj(i -> {
                    if (i == rises) {
                        return NEITHER;
                    }
                    return i > rises
                            ? mixed(OCHRES, (double) (i - rises) / Math.max(1, falls))
                            : mixed(BLUES, (double) (rises - i) / Math.max(1, rises));
                })
                .toList();
    }

    private static Color mixed(int[] stops, double share) {
        double at = Math.min(1, share) * (stops.length - 1);
        int i = Math.min(stops.length - 2, (int) at);
        Color from = new Color(stops[i]);
        Color to = new Color(stops[i + 1]);
        double f = at - i;
        return new Color(
                (int) Math.round(from.getRed() * (1 - f) + to.getRed() * f),
                (int) Math.round(from.getGreen() * (1 - f) + to.getGreen() * f),
                (int) Math.round(from.getBlue() * (1 - f) + to.getBlue() * f));
    }

    /** Place of the class of a value. */
    int classOf(double value) {
        int place = Arrays.binarySearch(
                limits.stream().mapToDouble(Double::doubleValue).toArray(), value);
        return place >= 0 ? place + 1 : -place - 1;
    }

    /** Colour of a share, 0 to 1, of the largest drawdown, or, if negative, of the largest rise. */
    static Color shade(double share) {
        return Math.abs(share) < 0.002 ? Color.WHITE : mixed(share > 0 ? OCHRES : BLUES, Math.sqrt(Math.abs(share)));
    }
}

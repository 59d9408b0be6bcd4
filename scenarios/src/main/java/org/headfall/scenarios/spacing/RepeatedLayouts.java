package org.headfall.scenarios.spacing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.headfall.scenarios.scenario.LayoutPlaces;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.spatial.Position;

/**
 * Tells layouts that are the same thing under another name, such as any two bores: as far as drawdown and pipe go, bores whose
 * distances to all others are the same. Keeps what it was asked about.
 */
final class RepeatedLayouts {

    private static final double SAME = 1e-6;

    private final Map<Integer, Map<Layout, double[]>> seen = new LinkedHashMap<>();
    private final List<String> repeats = new ArrayList<>();

    /**
     * Whether a layout is one that was asked about before.
     *
     * @param layout the layout
     * @param count number of its bores
     */
    boolean isOneBefore(Layout layout, int count) {
        double[] distances = distances(LayoutPlaces.of(layout, count, 1));
        Map<Layout, double[]> others = seen.computeIfAbsent(count, any -> new LinkedHashMap<>());
        for (Map.Entry<Layout, double[]> other : others.entrySet()) {
            if (same(other.getValue(), distances)) {
                String bores = count == 1 ? " of 1 bore is the " : " of " + count + " bores is the ";
                repeats.add(name(layout) + bores + name(other.getKey()));
                return true;
            }
        }
        others.put(layout, distances);
        return false;
    }

    /** What was left out and why, in words; nothing if no layout was repeated. */
    String words() {
        return repeats.isEmpty() ? "" : "Left out as the same thing repeated: " + String.join(", ", repeats) + ".";
    }

    private static String name(Layout layout) {
        return layout.name().toLowerCase(Locale.ROOT);
    }

    /** Distances from each bore to all, increasing, the bores in the order of these. */
    private static double[] distances(List<Position> places) {
        return places.stream()
                .map(one -> places.stream()
                        .mapToDouble(other -> SAME * Math.rint(LayoutDistances.distance(one, other) / SAME))
                        .sorted()
                        .toArray())
                .sorted(Arrays::compare)
                .flatMapToDouble(Arrays::stream)
                .toArray();
    }

    private static boolean same(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            if (Math.abs(one[i] - other[i]) > 2 * SAME) {
                return false;
            }
        }
        return true;
    }
}

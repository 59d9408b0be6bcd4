package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;

/** What may decide the largest rate in a cell: fixed reasons first, then the limits of the document. */
final class Ruling {

    static final int LARGEST_RATE = 0;
    static final int PUMPING_LEVEL = 1;
    static final int LIFT = 2;
    static final int AQUIFER_TOP = 3;
    static final int DISTANCE_TO_BORES = 4;
    static final int DISTANCE_TO_SPRINGS = 5;
    static final int DISTANCE_TO_RIM = 6;
    static final int EXCLUDED = 7;
    static final int DEPTH = 8;

    private static final List<String> REASONS = List.of(
            "largest rate of a bore",
            "deepest pumping level",
            "largest lift",
            "level above the aquifer top",
            "distance to bores",
            "distance to springs",
            "distance to the rim of the aquifer",
            "excluded area",
            "deepest bore");

    private final List<String> names = new ArrayList<>(REASONS);

    /** Number of a further reason. */
    int add(String name) {
        names.add(name);
        return names.size() - 1;
    }

    /** All reasons, by their numbers. */
    List<String> names() {
        return List.copyOf(names);
    }
}

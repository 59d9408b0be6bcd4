package org.headfall.scenarios.findings;

import java.util.List;
import java.util.stream.Stream;

/**
 * How places recover when taking stops.
 *
 * @param lines what becomes of drawdown, by taking and station
 * @param missing why some taking has no lines, one sentence each; empty also where nobody asked
 */
public record Recoveries(List<Recovery> lines, List<String> missing) {

    /** Nobody asked. */
    public static final Recoveries NONE = new Recoveries(List.of(), List.of());

    /** Copies the lists. */
    public Recoveries {
        lines = List.copyOf(lines);
        missing = List.copyOf(missing);
    }

    /**
     * Both together, these first.
     *
     * @param others further ones
     */
    public Recoveries and(Recoveries others) {
        return new Recoveries(
                Stream.concat(lines.stream(), others.lines.stream()).toList(),
                Stream.concat(missing.stream(), others.missing.stream()).toList());
    }
}

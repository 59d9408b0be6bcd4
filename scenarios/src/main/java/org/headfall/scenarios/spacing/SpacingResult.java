package org.headfall.scenarios.spacing;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;

/**
 * Layouts compared.
 *
 * @param lines one a layout, number of bores and spacing
 * @param economic for each layout and number of bores, that at the spacing of least cost
 */
public record SpacingResult(List<Line> lines, List<Line> economic) {

    /** Copies the lists. */
    public SpacingResult {
        lines = List.copyOf(lines);
        economic = List.copyOf(economic);
    }

    /**
     * One layout.
     *
     * @param layout the layout
     * @param bores number of bores
     * @param spacing distance of neighbours (m)
     * @param yield total rate at the given lift (m³/d)
     * @param yieldLost share of the yield of as many bores far apart that interference takes (-)
     * @param lift mean lift at the given total rate (m)
     * @param greatestLift lift of the bore with the deepest level then (m)
     * @param interference mean drawdown in a bore by its neighbours then (m)
     * @param pipe length of pipe (m)
     * @param energy energy then (kWh/ML)
     * @param cost cost then, pipes and bores included (a ML)
     */
    public record Line(
            Layout layout,
            int bores,
            double spacing,
            double yield,
            double yieldLost,
            double lift,
            double greatestLift,
            double interference,
            double pipe,
            double energy,
            double cost) {}

    /** The layout of least cost of all. */
    public Optional<Line> best() {
        return economic.stream().reduce((a, b) -> b.cost() < a.cost() ? b : a);
    }
}

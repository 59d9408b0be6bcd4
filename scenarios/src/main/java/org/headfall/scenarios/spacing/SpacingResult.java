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

    /** Share of a spacing that a search leaves open. */
    private static final double NEAR_THE_END = 1e-3;

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

    /**
     * Whether cost falls towards an end of the range that was looked at, so that the true least lies beyond it.
     *
     * @param line one of the economic layouts
     */
    public boolean isAtEnd(Line line) {
        double from = lines.stream().mapToDouble(Line::spacing).min().orElseThrow();
        double to = lines.stream().mapToDouble(Line::spacing).max().orElseThrow();
        return line.bores() > 1
                && (line.spacing() <= from * (1 + NEAR_THE_END) || line.spacing() >= to * (1 - NEAR_THE_END));
    }

    /** What to do about spacings {@linkplain #isAtEnd at an end}, in a sentence; absent if there are none. */
    public Optional<String> remarkOnEnds() {
        return economic.stream().anyMatch(this::isAtEnd)
                ? Optional.of(
                        "Where the least cost stands at the end of the range of spacings, the true least may lie beyond"
                                + " it: widen from and to.")
                : Optional.empty();
    }

    /** The layout of least cost of all. */
    public Optional<Line> best() {
        return economic.stream().reduce((a, b) -> b.cost() < a.cost() ? b : a);
    }
}

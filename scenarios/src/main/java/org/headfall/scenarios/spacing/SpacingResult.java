package org.headfall.scenarios.spacing;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;

/**
 * Layouts compared.
 *
 * @param lines one a layout, number of bores and spacing
 * @param economic for each layout and number of bores, that at the spacing of least cost
 * @param asked what was asked for
 * @param lowered how far the bores of the document lower heads in the middle of the field (m), negative where they raise
 *     them; every lift counts it
 */
public record SpacingResult(List<Line> lines, List<Line> economic, SpacingSpecification asked, double lowered) {

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
     * @param liftByDocument what of that the bores of the document cause, which are no part of the layout (m): as much as they
     *     lower heads, less where water would rise higher than it is wanted without them
     * @param greatestLift lift of the bore with the deepest level then (m)
     * @param interference mean drawdown in a bore by its neighbours then (m)
     * @param pipe length of pipe (m)
     * @param energy energy then (kWh/ML)
     * @param cost cost then, pipes and bores included (per ML)
     */
    public record Line(
            Layout layout,
            int bores,
            double spacing,
            double yield,
            double yieldLost,
            double lift,
            double liftByDocument,
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

    /** What the bores of the document do to all lifts, in a sentence. */
    public String wordsOnDocument() {
        if (lowered == 0) {
            return "No bore of the document lowers heads there: all lift is that of the field itself.";
        }
        boolean less = lines.stream().anyMatch(line -> line.liftByDocument() < lowered * (1 - NEAR_THE_END));
        return String.format(
                Locale.ROOT,
                "By the end the bores of the document %s heads in the middle of the field by %.2f m: every lift counts that,"
                        + " and spacing.csv says how much of it that is%s.",
                lowered > 0 ? "lower" : "raise",
                Math.abs(lowered),
                less ? ", less where water still rises by itself to where it is wanted" : "");
    }

    /** The layout of least cost of all. */
    public Optional<Line> best() {
        return economic.stream().reduce((a, b) -> b.cost() < a.cost() ? b : a);
    }
}

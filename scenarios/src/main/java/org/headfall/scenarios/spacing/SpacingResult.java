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
 * @param cellWidth width of the cell in the middle of the field (m); 0 if no grid is behind the response
 * @param repeats which layouts were left out as the same thing repeated, in a sentence; empty if none was
 */
public record SpacingResult(
        List<Line> lines,
        List<Line> economic,
        SpacingSpecification asked,
        double lowered,
        double cellWidth,
        String repeats) {

    /** What yields and lifts of the same row are of, in sentences. */
    public static final String WORDS_ON_RATES =
            "Each row of spacing.csv is of two designs: its total yield lets bores take different rates, so that all"
                    + " have the same drawdown; lift, interference, energy and cost are those of the given rate shared equally.";

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
     * @param yield total rate at the given lift, of bores with rates that give each the same drawdown (m³/d)
     * @param yieldLost share of the yield of as many bores far apart that interference takes (-)
     * @param lift mean lift at the given total rate, shared equally (m)
     * @param liftByDocument what of that the bores of the document cause, which are no part of the layout (m): as much as they
     *     lower heads, less where water would rise higher than it is wanted without them
     * @param greatestLift lift of the bore with the deepest level then (m)
     * @param interference mean drawdown in a bore by its neighbours then (m)
     * @param pipe length of pipe (m)
     * @param energy energy then (kWh/ML)
     * @param cost cost then, pipes and bores included (per ML)
     * @param gridError how far the grid may be off
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
            double cost,
            GridError gridError) {}

    /**
     * How far the grid may be off, by the difference to cells twice as wide; all NaN where these were too wide for a boundary.
     *
     * @param response error of drawdown by a neighbour at the spacing, as a share of it (-)
     * @param lift error of the mean lift (m)
     * @param yield error of the total yield (m³/d)
     */
    public record GridError(double response, double lift, double yield) {}

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

    /** How far the grid may be off by distance, in a sentence. */
    public String wordsOnGrid() {
        if (lines.stream().anyMatch(line -> Double.isNaN(line.gridError().response()))) {
            return "How far the grid may be off is not known: a boundary is too short for cells twice as wide, which would"
                    + " tell.";
        }
        Line nearest = lines.get(0);
        Line farthest = lines.get(lines.size() - 1);
        Line worst = lines.stream()
                .reduce((a, b) -> b.gridError().response() > a.gridError().response() ? b : a)
                .orElseThrow();
        String between = share(worst).equals(share(nearest)) || share(worst).equals(share(farthest))
                ? ""
                : ", at most " + share(worst) + " " + metres(worst) + " away";
        return String.format(
                Locale.ROOT,
                "By cells twice as wide the grid, with cells of %.0f m there, may be off by %s of the drawdown by a neighbour %s"
                        + " away and %s %s away%s; by up to %.2f m in mean lifts and %.1f %% in yields. spacing.csv says it for"
                        + " each layout.",
                cellWidth,
                share(nearest),
                metres(nearest),
                share(farthest),
                metres(farthest),
                between,
                lines.stream()
                        .mapToDouble(line -> line.gridError().lift())
                        .max()
                        .orElseThrow(),
                lines.stream()
                        .filter(line -> line.yield() > 0)
                        .mapToDouble(line -> 100 * line.gridError().yield() / line.yield())
                        .max()
                        .orElse(0));
    }

    private static String metres(Line line) {
        return String.format(Locale.ROOT, "%.0f m", line.spacing());
    }

    private static String share(Line line) {
        return String.format(Locale.ROOT, "%.2f %%", 100 * line.gridError().response());
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

package org.headfall.validation.report;

import java.util.Comparator;
import java.util.List;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;

/**
 * A case as the page shows it.
 *
 * @param result what came of it
 * @param drawings its plots
 * @param shown comparisons shown at once: those that fail, then those nearest to their tolerance
 * @param rest all others
 */
public record CaseView(CaseResult result, List<Drawing> drawings, List<Comparison> shown, List<Comparison> rest) {

    private static final int SHOWN = 12;
    private static final int MOST_FAILURES = 40;

    /**
     * A plot, drawn.
     *
     * @param title what it shows
     * @param svg the svg element
     */
    public record Drawing(String title, String svg) {}

    /** The view of a result. */
    static CaseView of(CaseResult result) {
        List<Comparison> sorted = result.comparisons().stream()
                .sorted(Comparator.comparingDouble(Comparison::strain).reversed())
                .toList();
        int cut = Math.min(
                sorted.size(),
                Math.max(SHOWN, Math.min(MOST_FAILURES, result.failures().size())));
        return new CaseView(
                result,
                result.plots().stream()
                        .map(plot -> new Drawing(plot.title(), PlotDrawing.of(plot)))
                        .toList(),
                sorted.subList(0, cut),
                sorted.subList(cut, sorted.size()));
    }

    /** "129 of 131 comparisons hold". */
    public String count() {
        int all = result.comparisons().size();
        int holding = all - result.failures().size();
        return holding == all ? "all " + all + " comparisons hold" : holding + " of " + all + " comparisons hold";
    }

    /** Share of the tolerance that the tightest comparison uses. */
    public String strain() {
        return result.tightest().map(tightest -> percent(tightest.strain())).orElse("");
    }

    /** A strain in percent of what is allowed. */
    public static String percent(double strain) {
        return Double.isInfinite(strain) ? "beyond any" : Figures.significant(100 * strain, 3) + " %";
    }

    /** A value to seven digits. */
    public static String value(double value) {
        return Figures.significant(value, 7);
    }

    /** A difference or tolerance to three digits. */
    public static String small(double value) {
        return Figures.significant(value, 3);
    }
}

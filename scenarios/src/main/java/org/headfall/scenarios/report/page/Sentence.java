package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A sentence with figures in it. Figures keep their number, so that the page can show them in another unit.
 *
 * @param parts words and figures in their order
 */
public record Sentence(List<Part> parts) {

    /** Copies the list. */
    public Sentence {
        parts = List.copyOf(parts);
    }

    /**
     * Words or a figure.
     *
     * @param text as shown
     * @param quantity name of the quantity of a figure; empty for words
     * @param value number of a figure in metres, days and m³/d, empty for words
     * @param error whether the figure is a numerical error, which has more decimals
     */
    public record Part(String text, String quantity, String value, boolean error) {
        static Part words(String text) {
            return new Part(text, "", "", false);
        }
    }

    /** Words alone. */
    public static Sentence of(String words) {
        return new Sentence(List.of(Part.words(words)));
    }

    /** The same and words after it. */
    Sentence and(String words) {
        return with(Part.words(words));
    }

    /** The same and a figure with its unit after it. */
    Sentence and(Quantity quantity, double value) {
        if (!Double.isFinite(value)) {
            return and(quantity.show(value));
        }
        String text = quantity.show(value) + (quantity.unit().isEmpty() ? "" : "\u00a0" + quantity.unit());
        return with(new Part(text, quantity.name(), Double.toString(value), false));
    }

    /** The same and a figure, its numerical error after it if it has one, or a remark that the error is not known. */
    Sentence and(Quantity quantity, double value, double error) {
        Sentence figure = and(quantity, value);
        if (!Double.isFinite(value) || error == 0) {
            return figure;
        }
        return Double.isFinite(error)
                ? figure.and(" ").andError(quantity, error)
                : figure.and(" (numerical error not estimated)");
    }

    /** The same and a numerical error, "under" the smallest that is shown where it is smaller. */
    Sentence andError(Quantity quantity, double error) {
        boolean tiny = error < quantity.smallestError();
        double shown = tiny ? quantity.smallestError() : error;
        String text = quantity.showError(shown) + "\u00a0" + quantity.unit();
        return and(tiny ? "\u00b1\u00a0under\u00a0" : "\u00b1\u00a0")
                .with(new Part(text, quantity.name(), Double.toString(shown), true));
    }

    private Sentence with(Part part) {
        List<Part> more = new ArrayList<>(parts);
        more.add(part);
        return new Sentence(more);
    }

    /** The sentence as plain text. */
    public String text() {
        return parts.stream().map(Part::text).collect(Collectors.joining());
    }
}

package org.headfall.scenarios.sweep.document;

import java.util.List;
import org.headfall.scenarios.sweep.figures.KeptFigure;

/**
 * A whole sweep.
 *
 * @param title what it is called
 * @param base the scenario that is varied
 * @param variables what varies, in the order of the document
 * @param correlations which variables depend on each other
 * @param design how runs are chosen
 * @param figures what is kept of each run: what is asked for, then margin and first crossing of each limit
 * @param questions what is asked of the runs
 */
public record SweepDocument(
        String title,
        BaseScenario base,
        List<Variable> variables,
        List<Correlation> correlations,
        Design design,
        List<KeptFigure> figures,
        Questions questions) {
    /** Copies the lists. */
    public SweepDocument {
        variables = List.copyOf(variables);
        correlations = List.copyOf(correlations);
        figures = List.copyOf(figures);
    }

    /**
     * A kept figure.
     *
     * @param name its name
     * @throws IllegalArgumentException if none is called so
     */
    public KeptFigure figure(String name) {
        return figures.stream()
                .filter(figure -> figure.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no figure is called " + name));
    }

    /** The kept figures that tables show, which those of a series would crowd. */
    public List<KeptFigure> figuresOfTables() {
        return figures.stream().filter(figure -> !figure.isOfSeries()).toList();
    }
}

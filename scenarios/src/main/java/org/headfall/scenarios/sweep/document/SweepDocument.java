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
 * @param keepsHeads whether heads of the grid of each run are kept in a file of its own
 * @param questions what is asked of the runs
 */
public record SweepDocument(
        String title,
        BaseScenario base,
        List<Variable> variables,
        List<Correlation> correlations,
        Design design,
        List<KeptFigure> figures,
        boolean keepsHeads,
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

    /** Whether something is kept that only a simulation on the grid has: heads of all cells, volumes of the balance. */
    public boolean needsGrid() {
        return keepsHeads || figures.stream().anyMatch(KeptFigure::needsBalance);
    }

    /** Whether something is kept that takes the effects of single bores. */
    public boolean needsInterference() {
        return figures.stream().anyMatch(KeptFigure::needsInterference);
    }

    /** The kept figures that tables show, which those of a series would crowd. */
    public List<KeptFigure> figuresOfTables() {
        return figures.stream().filter(figure -> !figure.isOfSeries()).toList();
    }
}

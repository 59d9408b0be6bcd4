package org.headfall.validation.check;

import java.util.ArrayList;
import java.util.List;

/** What a case finds while it runs. Belongs to one run of one case. */
public final class Findings {

    private final List<Comparison> comparisons = new ArrayList<>();
    private final List<Plot> plots = new ArrayList<>();
    private final List<Misprint> misprints = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    /** Adds a comparison. */
    public void compare(Comparison comparison) {
        comparisons.add(comparison);
    }

    /** Adds a plot. */
    public void plot(Plot plot) {
        plots.add(plot);
    }

    /** Adds a misprint that was found. */
    public void misprint(Misprint misprint) {
        misprints.add(misprint);
    }

    /** Adds a remark, such as the seed of random inputs. */
    public void note(String note) {
        notes.add(note);
    }

    /** The comparisons so far. */
    public List<Comparison> comparisons() {
        return List.copyOf(comparisons);
    }

    /** The plots so far. */
    public List<Plot> plots() {
        return List.copyOf(plots);
    }

    /** The misprints so far. */
    public List<Misprint> misprints() {
        return List.copyOf(misprints);
    }

    /** The remarks so far. */
    public List<String> notes() {
        return List.copyOf(notes);
    }
}

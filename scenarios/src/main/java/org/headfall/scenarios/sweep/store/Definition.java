package org.headfall.scenarios.sweep.store;

import java.util.List;
import java.util.Map;

/**
 * What a store is of. Everything that decides results is in it.
 *
 * @param texts named texts: title, both documents, program and version, and keys (SHA-256) of what must not change
 *     unseen
 * @param figures heads of the columns of the kept figures, with units
 * @param runs every run, by number from 1; those of a part only, if the sweep is cut into parts
 */
public record Definition(Map<String, String> texts, List<String> figures, List<PlannedRun> runs) {

    /** Title of the sweep. */
    public static final String TITLE = "title";
    /** The sweep document. */
    public static final String SWEEP_DOCUMENT = "sweep document";
    /** The base scenario. */
    public static final String BASE_DOCUMENT = "base document";
    /** Key of the base scenario and of every file that it, or a variation of it, names. */
    public static final String BASE_KEY = "SHA-256 of base scenario and files";
    /** Key of the inputs of all runs. */
    public static final String RUNS_KEY = "SHA-256 of runs";
    /** Key of the kept figures. */
    public static final String FIGURES_KEY = "SHA-256 of kept figures";
    /** Program and version. */
    public static final String PROGRAM = "program";
    /** Which part of how many, such as "3/40". */
    public static final String PART = "part";

    /** Copies the collections. */
    public Definition {
        texts = Map.copyOf(texts);
        figures = List.copyOf(figures);
        runs = List.copyOf(runs);
    }

    /**
     * A run that is to be made.
     *
     * @param number number in the sweep, from 1
     * @param inputs value of each variable, as a JSON object of texts
     * @param hash SHA-256 of everything that decides its figures
     */
    public record PlannedRun(int number, String inputs, String hash) {}
}

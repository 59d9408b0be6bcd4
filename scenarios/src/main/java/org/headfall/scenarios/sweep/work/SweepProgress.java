package org.headfall.scenarios.sweep.work;

/** Is told how a sweep goes. Called by one thread at a time. */
public interface SweepProgress {

    /**
     * Something worth a line of its own.
     *
     * @param line the line
     */
    void say(String line);

    /**
     * Runs have been made.
     *
     * @param done runs recorded so far
     * @param failed how many of these failed
     * @param all runs of the sweep or its part
     */
    void reached(int done, int failed, int all);
}

package org.headfall.scenarios.run;

/** Is told how far a run has come. Called by the thread that runs, at every time step. */
@FunctionalInterface
public interface RunProgress {

    /**
     * The run has come some way.
     *
     * @param stage what is being done, a few words; a new stage begins when it changes
     * @param fraction part of the stage that is done, from 0 to 1
     */
    void reached(String stage, double fraction);
}

package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import org.headfall.scenarios.sweep.store.RunOutcome;

/** Makes the runs of a sweep somewhere: on threads of this process, or on other computers. */
public interface RunEngine {

    /**
     * Makes runs, and returns when all are made or no more are wanted.
     *
     * @param wanted the runs
     * @param receiver is handed what came of each as soon as it is known, in any order, by the calling thread alone
     * @throws IOException if it cannot go on, or what came of a run cannot be recorded; what was handed over is kept
     * @throws InterruptedException if interrupted
     */
    void make(WantedRuns wanted, Receiver receiver) throws IOException, InterruptedException;

    /** Records what comes of runs. */
    interface Receiver {

        /**
         * Something worth a line of its own.
         *
         * @param line the line
         * @throws IOException if the log cannot be written
         */
        void say(String line) throws IOException;

        /** Whether runs may still begin; no, once the time allowed is over. May be asked by any thread. */
        boolean wantsMore();

        /**
         * Takes what came of a run.
         *
         * @param outcome the outcome
         * @throws IOException if it cannot be recorded
         * @throws InterruptedException if interrupted
         */
        void receive(RunOutcome outcome) throws IOException, InterruptedException;
    }
}

package org.headfall.scenarios.sweep.work;

import java.util.OptionalInt;
import org.headfall.scenarios.run.FewSources;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.sweep.document.SweepDocument;

/**
 * What a sweep takes, by a rough count made before it starts.
 *
 * @param memoryOfRun memory of one run (bytes)
 * @param secondsOfRun time of a run that shares nothing, on one thread (s)
 */
record Workload(long memoryOfRun, double secondsOfRun) {

    /** Rough, for matrices, multigrid, sealing bed and fields: a million cells took 726 MiB in a heap of 1 GiB (bytes a cell). */
    private static final long PER_CELL = 1_200;

    private static final long PER_STATION_DAY = 40;

    /** Rough, on one processor of 2026: 65,536 cells and 618 steps took 12 s (s a cell and step). */
    private static final double PER_CELL_AND_STEP = 3e-7;

    /** Rough, on the same: 400 cells and 260 steps took 0.15 s, most of it for bores and springs (s a step). */
    private static final double PER_STEP = 4e-4;

    /** Rough, on the same: 65,536 cells and 24 solves took 0.3 s (s a cell and solve). */
    private static final double PER_CELL_AND_SOLVE = 2e-7;

    /** Rough, on the same: reading and planning a run, and what a few hundred cells take in few sources (s). */
    private static final double PER_RUN = 0.04;

    /** Steps that a run takes besides one a recorded day. */
    private static final int MORE_STEPS = 20;

    /** An answer from responses (s). */
    private static final double PER_ANSWER = 0.003;

    private static final long FIXED = 4_000_000;

    /** Workload of a sweep whose runs are like its base scenario. */
    static Workload of(SweepDocument sweep) {
        RunPlan plan = sweep.base().plan();
        long cells = plan.description().grid().cellCount();
        long stations = plan.description().stations().size();
        long kept = 2L + plan.description().reportDates().size();
        return new Workload(
                FIXED + cells * (PER_CELL + 8 * kept) + stations * plan.stationDays().length * PER_STATION_DAY,
                secondsOfRun(plan, sweep, cells));
    }

    /** Time of a run on one processor that does nothing else (s). */
    private static double secondsOfRun(RunPlan plan, SweepDocument sweep, long cells) {
        OptionalInt solves = RunMaker.fewSourcesSuffice(sweep) ? FewSources.expectedSolves(plan) : OptionalInt.empty();
        return PER_RUN
                + (solves.isPresent()
                        ? cells * PER_CELL_AND_SOLVE * solves.getAsInt()
                        : (cells * PER_CELL_AND_STEP + PER_STEP) * (plan.stationDays().length + MORE_STEPS));
    }

    /** Threads that fit into some memory; at least one. */
    int threads(int wanted, long memory) {
        return (int) Math.max(1, Math.min(wanted, memory / memoryOfRun));
    }

    /**
     * Time of many runs (s).
     *
     * @param simulations runs to be simulated; computing responses that others share counts as one
     * @param answers runs that are answered from responses
     * @param threads runs at a time
     */
    double seconds(int simulations, int answers, int threads) {
        return (simulations * secondsOfRun + answers * PER_ANSWER) / threads;
    }
}

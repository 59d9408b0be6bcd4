package org.headfall.scenarios.sweep.work;

import java.util.Locale;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.sweep.document.BaseScenario;

/**
 * What a sweep takes, by a rough count made before it starts.
 *
 * @param memoryOfRun memory of one run (bytes)
 */
record Workload(long memoryOfRun) {

    /** Rough, for matrices, multigrid, sealing bed and fields: a million cells took 726 MiB in a heap of 1 GiB (bytes a cell). */
    private static final long PER_CELL = 1_200;

    private static final long PER_STATION_DAY = 40;
    private static final long FIXED = 4_000_000;
    private static final long MEGABYTE = 1_000_000;

    static Workload of(BaseScenario base) {
        RunPlan plan = base.plan();
        long cells = plan.description().grid().cellCount();
        long stations = plan.description().stations().size();
        long kept = 2L + plan.description().reportDates().size();
        return new Workload(
                FIXED + cells * (PER_CELL + 8 * kept) + stations * plan.stationDays().length * PER_STATION_DAY);
    }

    /** Threads that fit into some memory; at least one. */
    int threads(int wanted, long memory) {
        return (int) Math.max(1, Math.min(wanted, memory / memoryOfRun));
    }

    String words(int threads) {
        return String.format(
                Locale.ROOT,
                "about %d MB of memory for %d run%s at a time",
                Math.max(1, memoryOfRun * threads / MEGABYTE),
                threads,
                threads == 1 ? "" : "s");
    }
}

package org.headfall.cli.spark;

import java.io.IOException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.headfall.scenarios.sweep.work.RunMaker;

/**
 * Makers of runs of a process of the cluster. Each task is unpacked from bytes and so brings objects of its own; what is
 * to last from one to the next, the documents read and responses computed, can only be kept by the class.
 */
final class MakersOfProcess {

    private static final ConcurrentMap<String, FutureTask<RunMaker>> MAKERS = new ConcurrentHashMap<>();

    private MakersOfProcess() {}

    /** The maker of a sweep, made by the first task that asks and awaited by the others. */
    static RunMaker of(SweepCopy sweep) throws IOException, InterruptedException {
        FutureTask<RunMaker> task = MAKERS.computeIfAbsent(
                sweep.id(),
                missing ->
                        new FutureTask<>(() -> sweep.maker(Runtime.getRuntime().availableProcessors())));
        task.run();
        try {
            return task.get();
        } catch (ExecutionException e) {
            throw new IOException("the sweep cannot be read on this computer: " + e.getCause(), e.getCause());
        }
    }
}

package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;

/**
 * Work that other threads take up while the calling thread has its own, and that the calling thread helps to finish
 * afterwards. With one thread in all, everything is done there. Tasks must not depend on each other.
 */
final class SideTasks implements AutoCloseable {

    private final ExecutorService others;
    private final boolean alone;
    private final List<FutureTask<?>> tasks = new ArrayList<>();

    /**
     * Tasks for some threads.
     *
     * @param threads threads in all, the calling one included
     */
    SideTasks(int threads) {
        alone = threads == 1;
        others = Executors.newFixedThreadPool(Math.max(1, threads - 1), task -> {
            Thread thread = new Thread(task, "side task");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Adds a task. */
    <T> Future<T> add(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        tasks.add(task);
        if (!alone) {
            others.execute(task);
        }
        return task;
    }

    /** Does in the calling thread what nobody has begun yet. */
    void help() {
        help((stage, fraction) -> {});
    }

    /** Does in the calling thread what nobody has begun yet, and says so. */
    void help(RunProgress progress) {
        for (int i = 0; i < tasks.size(); i++) {
            progress.reached("repeating the run for its errors", (double) i / tasks.size());
            tasks.get(i).run();
        }
    }

    /** Result of a task; what it threw is thrown here, an {@link IOException} unchecked. */
    static <T> T result(Future<T> task) {
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while other runs were under way", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException failure) {
                throw failure;
            }
            if (e.getCause() instanceof IOException failure) {
                throw new UncheckedIOException(failure);
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /**
     * Drops what nobody has begun, interrupts what has begun and waits until it has ended, as it may still write into a folder
     * that the caller gives up next. An interrupt of the caller is kept for it and does not end the wait.
     */
    @Override
    public void close() {
        others.shutdownNow();
        boolean interrupted = false;
        boolean ended = false;
        while (!ended) {
            try {
                ended = others.awaitTermination(1, TimeUnit.HOURS);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}

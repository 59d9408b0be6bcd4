package org.headfall.solver.linear;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/**
 * A fixed number of threads that share loops. A range is cut into as many parts as there are threads, and whoever is free
 * takes the next one: usually the caller the first and the team's own threads the others, but where those are late, because
 * they sleep or other programs have the processors, the caller does their parts too instead of waiting. Which thread does
 * what never changes a result, because the loops given to it write disjoint cells and sum by fixed blocks. Threads wait by
 * spinning for a short while and then sleep; they are daemons and end with {@link #close}.
 *
 * <p>One loop at a time: a team serves one solver thread. Starting a loop allocates nothing.
 */
public final class WorkerTeam implements AutoCloseable {
    /** Work on a part of a range. */
    @FunctionalInterface
    public interface RangeTask {
        /** Does the work of {@code from <= index < to}. */
        void run(int from, int to);
    }

    /**
     * How long a waiting thread spins before it goes to sleep (ns): longer than the work between two loops on a grid of
     * some 100,000 cells, because waking takes tens of microseconds; not much longer, because another program may need
     * the core, even the one that runs the other part.
     */
    private static final long SPIN_NANOSECONDS = 200_000;

    private static final long UNTAKEN = 0xffffffffL;

    private static final long ROUND = 1L << 32;

    private final Thread[] threads;
    /** Number of the loop in the upper half, parts of it that nobody has taken yet in the lower half. */
    private final AtomicLong state = new AtomicLong();

    private final AtomicInteger unfinished = new AtomicInteger();
    private final AtomicInteger sleepers = new AtomicInteger();
    private volatile @Nullable Thread sleepingCaller;
    private volatile boolean closed;
    private volatile @Nullable Throwable failure;

    // Written before the state that offers the parts, and not again before all of them are finished.
    private RangeTask task = (from, to) -> {};
    private int count;
    private int parts;

    /**
     * Starts a team.
     *
     * @param threads number of threads that work, the caller's included, at least 1
     */
    public WorkerTeam(int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("number of threads " + threads + " is below 1");
        }
        this.threads = new Thread[threads - 1];
        for (int t = 0; t < threads - 1; t++) {
            this.threads[t] = new Thread(this::serve, "linear-worker-" + (t + 1));
            this.threads[t].setDaemon(true);
            this.threads[t].start();
        }
    }

    /** Returns the number of threads that work, the caller's included. */
    public int size() {
        return threads.length + 1;
    }

    /**
     * Runs {@code work} over {@code 0 <= index < total} in contiguous parts, one a thread, and returns when all are done.
     *
     * @param total length of the range
     * @param grain least length worth a thread of its own
     * @param work what to do; its parts run at the same time
     */
    public void split(int total, int grain, RangeTask work) {
        int wanted = Math.min(size(), total / Math.max(1, grain));
        if (wanted <= 1 || closed) {
            work.run(0, total);
            return;
        }
        task = work;
        count = total;
        parts = wanted;
        unfinished.set(wanted);
        state.set((state.get() & ~UNTAKEN) + ROUND + wanted);
        if (sleepers.get() > 0) {
            wakeAll();
        }
        while (takePart()) {
            // until none is left
        }
        awaitOthers();
    }

    /** Takes a part that nobody has taken yet and does it; answers whether there was one. */
    private boolean takePart() {
        long now = state.get();
        while ((now & UNTAKEN) > 0) {
            if (state.compareAndSet(now, now - 1)) {
                runPart(parts - (int) (now & UNTAKEN));
                return true;
            }
            now = state.get();
        }
        return false;
    }

    private void runPart(int part) {
        try {
            task.run((int) ((long) count * part / parts), (int) ((long) count * (part + 1) / parts));
        } catch (RuntimeException | Error thrown) {
            failure = thrown;
        }
        if (unfinished.decrementAndGet() == 0) {
            LockSupport.unpark(sleepingCaller);
        }
    }

    private void awaitOthers() {
        long deadline = System.nanoTime() + SPIN_NANOSECONDS;
        while (unfinished.get() > 0) {
            if (System.nanoTime() < deadline) {
                Thread.onSpinWait();
            } else {
                sleepingCaller = Thread.currentThread();
                // Whoever ends last sees the name if it was set in time; if not, its end is seen here.
                if (unfinished.get() > 0) {
                    LockSupport.park(this);
                }
            }
        }
        sleepingCaller = null;
        Throwable thrown = failure;
        failure = null;
        if (thrown != null) {
            throw new IllegalStateException("a part of a shared loop failed: " + thrown, thrown);
        }
    }

    private void serve() {
        while (!closed) {
            if (!takePart()) {
                awaitParts();
            }
        }
    }

    private void awaitParts() {
        long deadline = System.nanoTime() + SPIN_NANOSECONDS;
        while ((state.get() & UNTAKEN) == 0 && !closed) {
            if (System.nanoTime() < deadline) {
                Thread.onSpinWait();
            } else {
                sleepers.incrementAndGet();
                // Parts offered before the count was raised are seen here, later ones wake this thread.
                if ((state.get() & UNTAKEN) == 0 && !closed) {
                    LockSupport.park(this);
                }
                sleepers.decrementAndGet();
            }
        }
    }

    /** Ends the team's threads; loops given to it afterwards run in the caller. */
    @Override
    public void close() {
        closed = true;
        wakeAll();
    }

    private void wakeAll() {
        for (Thread thread : threads) {
            LockSupport.unpark(thread);
        }
    }
}

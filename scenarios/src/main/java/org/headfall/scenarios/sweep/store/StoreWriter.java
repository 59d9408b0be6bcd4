package org.headfall.scenarios.sweep.store;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * Records what many threads have computed. One thread writes; whatever has come in while it was writing goes into the next
 * transaction, so that short runs do not wait for the disk one by one.
 */
public final class StoreWriter implements AutoCloseable {

    /** Threads wait when so many outcomes are not written yet. */
    private static final int MOST_WAITING = 4096;

    private static final long LOOK_AFTER_MILLISECONDS = 50;

    private final SweepStore store;
    private final String program;
    private final BlockingQueue<RunOutcome> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final AtomicReference<@Nullable StoreException> failure = new AtomicReference<>();
    private final AtomicBoolean told = new AtomicBoolean();
    private final Thread thread;
    private volatile boolean closing;

    /**
     * Begins to write.
     *
     * @param store the store, used by nobody else until this is closed
     * @param program program and version
     */
    public StoreWriter(SweepStore store, String program) {
        this.store = store;
        this.program = program;
        thread = new Thread(this::write, "sweep store");
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Hands over an outcome. It is recorded soon after; it is certain only when this writer has been closed.
     *
     * @param outcome what came of a run
     * @throws StoreException if the store could not be written
     * @throws InterruptedException if interrupted while waiting for the disk
     */
    public void add(RunOutcome outcome) throws StoreException, InterruptedException {
        do {
            throwIfFailed();
        } while (!waiting.offer(outcome, LOOK_AFTER_MILLISECONDS, TimeUnit.MILLISECONDS));
    }

    private void throwIfFailed() throws StoreException {
        @Nullable StoreException failed = failure.get();
        // Once is enough: what has been thrown already must not be added to itself when this is closed.
        if (failed != null && told.compareAndSet(false, true)) {
            throw failed;
        }
    }

    private void write() {
        try {
            while (!closing || !waiting.isEmpty()) {
                @Nullable RunOutcome first = waiting.poll(LOOK_AFTER_MILLISECONDS, TimeUnit.MILLISECONDS);
                if (first != null) {
                    List<RunOutcome> group = new ArrayList<>(List.of(first));
                    waiting.drainTo(group);
                    store.record(group, program);
                }
            }
        } catch (StoreException e) {
            failure.set(e);
        } catch (InterruptedException e) {
            failure.set(new StoreException(store.file(), "interrupted while writing; give the same command again"));
        }
    }

    /** Writes what is waiting and stops. */
    @Override
    public void close() throws StoreException {
        closing = true;
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        throwIfFailed();
    }
}

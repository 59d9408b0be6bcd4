package org.headfall.cli.spark;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.apache.spark.api.java.JavaSparkContext;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.work.RunEngine;
import org.jspecify.annotations.Nullable;
import scala.Function2;
import scala.reflect.ClassTag$;
import scala.runtime.BoxedUnit;

/** A job of the cluster. What its tasks give arrives on a thread of the cluster's library, which must not wait for disks. */
final class ClusterJob {

    private static final long LOOK_AFTER_MILLISECONDS = 200;

    private final JavaSparkContext context;
    private final BlockingQueue<RunOutcome[]> arrived = new LinkedBlockingQueue<>();
    private final Thread thread;
    private volatile String failure = "";

    /** Takes outcomes. */
    @FunctionalInterface
    interface Taker {
        void take(RunOutcome outcome) throws IOException, InterruptedException;
    }

    /**
     * Begins a job.
     *
     * @param context the cluster
     * @param copy the sweep
     * @param tasks numbers of the runs of each task
     */
    ClusterJob(JavaSparkContext context, SweepCopy copy, List<int[]> tasks) {
        this.context = context;
        thread = new Thread(() -> run(copy, tasks), "sweep on a cluster");
        thread.setDaemon(true);
        thread.start();
    }

    private void run(SweepCopy copy, List<int[]> tasks) {
        try {
            Function2<Object, RunOutcome[], BoxedUnit> handler = (task, outcomes) -> {
                arrived.add(outcomes);
                return BoxedUnit.UNIT;
            };
            context.sc()
                    .runJob(
                            context.parallelize(tasks, tasks.size()).rdd(),
                            new MakeRuns(copy),
                            handler,
                            ClassTag$.MODULE$.apply(RunOutcome[].class));
        } catch (Exception e) {
            // Scala throws checked exceptions without declaring them; a job that was given up is one.
            failure = e.toString();
        }
    }

    /**
     * Hands over outcomes until the job has ended.
     *
     * @param receiver is asked whether the job may go on
     * @param taker receives the outcomes
     * @return why the cluster gave up; empty if it did not, or the job was ended because time was up
     */
    String drain(RunEngine.Receiver receiver, Taker taker) throws IOException, InterruptedException {
        boolean cancelled = false;
        while (thread.isAlive() || !arrived.isEmpty()) {
            RunOutcome @Nullable [] outcomes = arrived.poll(LOOK_AFTER_MILLISECONDS, TimeUnit.MILLISECONDS);
            if (outcomes != null) {
                for (RunOutcome outcome : outcomes) {
                    taker.take(outcome);
                }
            }
            if (!cancelled && !receiver.wantsMore()) {
                cancelled = true;
                context.cancelAllJobs();
            }
        }
        return cancelled ? "" : failure;
    }
}

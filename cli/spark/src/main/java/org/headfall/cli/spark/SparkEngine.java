package org.headfall.cli.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.work.EngineException;
import org.headfall.scenarios.sweep.work.RunEngine;
import org.headfall.scenarios.sweep.work.RunMaker;
import org.headfall.scenarios.sweep.work.WantedRuns;

/**
 * Makes the runs of a sweep on a cluster. A task is one run, or some that are answered from responses they share. The
 * cluster repeats tasks of computers that are lost; one that ends its process every time it is tried is recorded as failed,
 * and the rest goes on.
 */
final class SparkEngine implements RunEngine {

    /** Answers from responses take a millisecond or two; a task takes a few by itself. */
    private static final int SHARED_RUNS_OF_A_TASK = 200;

    /** Time in which a master has to take the application in (s). */
    private static final long PATIENCE = 25;

    private static final Pattern FAILED_TASK =
            Pattern.compile("Task (\\d+)(?:\\.\\d+)? in stage \\S+ failed (\\d+) times");
    private static final Pattern CAUSE =
            Pattern.compile("ExecutorLostFailure[^\\r\\n]*|[\\w.]*(?:Error|Exception)[^\\r\\n]*");
    private static final String LOST = "ended the process that made it";

    @Override
    public void make(WantedRuns wanted, Receiver receiver) throws IOException, InterruptedException {
        if (wanted.sweep().keepsHeads()) {
            throw new EngineException("keep_heads: a cluster sends figures back and no files; make the sweep on one"
                    + " computer, or by --part on several");
        }
        SparkConf settings =
                new SparkConf().setAppName("Headfall: " + wanted.sweep().title());
        MasterAddress master = new MasterAddress(settings.get("spark.master", ""));
        master.requireAnswer();
        SweepCopy copy = SweepCopy.of(UUID.randomUUID().toString(), wanted);
        try (JavaSparkContext context = context(settings, master)) {
            context.setLogLevel("WARN");
            receiver.say("runs are made by the cluster " + context.master());
            make(context, copy, wanted, receiver);
        }
    }

    private static JavaSparkContext context(SparkConf settings, MasterAddress master)
            throws IOException, InterruptedException {
        ExecutorService beside = Executors.newSingleThreadExecutor(SparkEngine::daemon);
        try {
            return beside.submit(() -> new JavaSparkContext(settings)).get(PATIENCE, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            throw master.unreachable("it has not taken this application in within " + PATIENCE + " s");
        } catch (ExecutionException e) {
            throw new EngineException("the cluster " + settings.get("spark.master") + " cannot be used: "
                    + firstLine(String.valueOf(e.getCause())));
        } finally {
            beside.shutdown();
        }
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "sweep on a cluster");
        thread.setDaemon(true);
        return thread;
    }

    private static void make(JavaSparkContext context, SweepCopy copy, WantedRuns wanted, Receiver receiver)
            throws IOException, InterruptedException {
        Set<Integer> left = new TreeSet<>(wanted.numbers());
        List<int[]> tasks = tasks(wanted);
        while (!tasks.isEmpty() && receiver.wantsMore()) {
            ClusterJob job = new ClusterJob(context, copy, tasks);
            String failure = job.drain(receiver, outcome -> {
                // A task that was run twice is handed over once; this guards the store all the same.
                boolean isNew = left.remove(outcome.number());
                if (isNew) {
                    receiver.receive(outcome);
                }
            });
            if (failure.isEmpty()) {
                return;
            }
            tasks = afterFailure(failure, tasks, left, receiver);
        }
    }

    private static List<int[]> tasks(WantedRuns wanted) {
        RunMaker planning = new RunMaker(wanted.sweep(), wanted.runs(), wanted.program(), 1, Optional.empty());
        int size = planning.shared() > 0 ? SHARED_RUNS_OF_A_TASK : 1;
        List<Integer> numbers = planning.inOrderOfWork(wanted.numbers());
        List<int[]> tasks = new ArrayList<>();
        for (int begin = 0; begin < numbers.size(); begin += size) {
            tasks.add(numbers.subList(begin, Math.min(numbers.size(), begin + size)).stream()
                    .mapToInt(Integer::intValue)
                    .toArray());
        }
        return tasks;
    }

    /** The tasks that are left after the cluster has given one up: the runs of that one apart, or none if it was one run. */
    private static List<int[]> afterFailure(String failure, List<int[]> tasks, Set<Integer> left, Receiver receiver)
            throws IOException, InterruptedException {
        Matcher failed = FAILED_TASK.matcher(failure);
        if (!failed.find()) {
            throw new EngineException("the cluster gave up: " + firstLine(failure)
                    + "; what was recorded is kept, and the same command goes on");
        }
        int[] culprit = tasks.get(Integer.parseInt(failed.group(1)));
        List<int[]> next = new ArrayList<>();
        if (culprit.length == 1 && left.remove(culprit[0])) {
            String reason = LOST + " each of the " + failed.group(2) + " times it was tried: " + cause(failure);
            receiver.receive(RunOutcome.failed(culprit[0], reason, 0, ""));
        }
        for (int[] task : tasks) {
            int[] rest = Arrays.stream(task).filter(left::contains).toArray();
            if (task == culprit) {
                Arrays.stream(rest).forEach(number -> next.add(new int[] {number}));
            } else if (rest.length > 0) {
                next.add(rest);
            }
        }
        return next;
    }

    private static String cause(String failure) {
        Matcher cause = CAUSE.matcher(failure);
        return cause.find() ? cause.group() : firstLine(failure);
    }

    private static String firstLine(String text) {
        return text.lines().findFirst().orElse("");
    }
}

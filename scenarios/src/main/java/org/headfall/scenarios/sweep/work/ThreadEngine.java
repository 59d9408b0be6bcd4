package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.headfall.scenarios.sweep.store.RunOutcome;

/** Makes runs on threads of this process, each by one thread, as many at a time as memory allows. */
public final class ThreadEngine implements RunEngine {

    /** Runs handed to the pool ahead of time, per thread. */
    private static final int AHEAD = 4;

    @Override
    public void make(WantedRuns wanted, Receiver receiver) throws IOException, InterruptedException {
        SweepForecast forecast = SweepForecast.of(wanted.sweep());
        int threads = threads(forecast, wanted, receiver);
        RunMaker maker =
                new RunMaker(wanted.sweep(), wanted.runs(), wanted.program(), threads, Optional.of(wanted.folder()));
        if (maker.shared() > 0) {
            receiver.say(maker.shared() + " of " + wanted.runs().size()
                    + " runs differ from others in rates alone and are answered from unit responses, where these are"
                    + " exact enough");
        }
        sayHowLong(forecast, wanted, threads, receiver);
        ExecutorService pool = Executors.newFixedThreadPool(threads, ThreadEngine::daemon);
        try {
            make(
                    maker,
                    maker.inOrderOfWork(wanted.numbers()),
                    new ExecutorCompletionService<>(pool),
                    threads,
                    receiver);
        } finally {
            pool.shutdownNow();
        }
    }

    /** Before the first run, from the number of cells and steps; the first runs will tell better. */
    private static void sayHowLong(SweepForecast forecast, WantedRuns wanted, int threads, Receiver receiver)
            throws IOException {
        int runs = wanted.numbers().size();
        TimeRange time = forecast.time(wanted.numbers(), threads);
        int timed = SweepRecorder.timedRuns(wanted.settings().threads());
        receiver.say(time.words() + " on free processors, by the number of cells and steps"
                + (runs > timed ? "; measuring, until " + timed + " runs have ended" : ""));
        String shortage = SweepForecast.shortage(time, runs, wanted.settings().budget());
        if (!shortage.isEmpty()) {
            receiver.say(shortage);
        }
    }

    private static int threads(SweepForecast forecast, WantedRuns wanted, Receiver receiver) throws IOException {
        long heap = Runtime.getRuntime().maxMemory();
        long memory = Math.min(wanted.settings().memory().orElse(Long.MAX_VALUE), heap);
        int asked = Math.min(wanted.settings().threads(), wanted.numbers().size());
        int threads = forecast.threads(asked, memory);
        receiver.say(forecast.memory(threads));
        if (threads < asked) {
            receiver.say("more threads would not fit into the memory that is allowed");
        }
        if (forecast.memoryOfRun() > heap) {
            receiver.say("that is more than the " + heap / SweepForecast.MEGABYTE
                    + " MB that Java may take: if memory runs out, give it more, such as"
                    + " HEADFALL_JAVA_OPTIONS=-Xmx6g, or take larger cells");
        }
        return threads;
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "sweep");
        thread.setDaemon(true);
        return thread;
    }

    private static void make(
            RunMaker maker,
            List<Integer> numbers,
            ExecutorCompletionService<Optional<RunOutcome>> pool,
            int threads,
            Receiver receiver)
            throws IOException, InterruptedException {
        int next = 0;
        int under = 0;
        while (next < numbers.size() || under > 0) {
            while (next < numbers.size() && under < AHEAD * threads && receiver.wantsMore()) {
                int number = numbers.get(next);
                pool.submit(() -> receiver.wantsMore() ? Optional.of(maker.outcome(number)) : Optional.empty());
                next++;
                under++;
            }
            if (under == 0) {
                break;
            }
            Optional<RunOutcome> outcome = finished(pool);
            under--;
            if (outcome.isPresent()) {
                receiver.receive(outcome.get());
            }
        }
    }

    private static Optional<RunOutcome> finished(ExecutorCompletionService<Optional<RunOutcome>> pool)
            throws InterruptedException {
        try {
            return pool.take().get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Error fatal) {
                throw fatal;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}

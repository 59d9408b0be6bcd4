package org.headfall.cli.spark;

import java.io.IOException;
import java.io.Serial;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.TaskContext;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.work.RunMaker;
import scala.Function2;
import scala.collection.Iterator;

/** What a task of the cluster does: makes some runs, one after the other. */
final class MakeRuns implements Function2<TaskContext, Iterator<int[]>, RunOutcome[]>, Serializable {

    @Serial
    private static final long serialVersionUID = 1L;

    private final SweepCopy sweep;

    MakeRuns(SweepCopy sweep) {
        this.sweep = sweep;
    }

    @Override
    public RunOutcome[] apply(TaskContext context, Iterator<int[]> numbers) {
        List<RunOutcome> outcomes = new ArrayList<>();
        try {
            RunMaker maker = MakersOfProcess.of(sweep);
            while (numbers.hasNext()) {
                for (int number : numbers.next()) {
                    context.killTaskIfInterrupted();
                    RunOutcome outcome = maker.outcome(number);
                    if (outcome.ending() == RunOutcome.Ending.OUT_OF_MEMORY) {
                        // The process is not sound any more; the cluster begins another and tries again.
                        throw new OutOfMemoryError("in run " + number);
                    }
                    outcomes.add(outcome);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the sweep was read", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return outcomes.toArray(RunOutcome[]::new);
    }
}

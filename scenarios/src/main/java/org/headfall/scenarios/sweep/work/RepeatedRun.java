package org.headfall.scenarios.sweep.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.RunOutcome;
import org.headfall.scenarios.sweep.store.StoredRun;

/**
 * A recorded run beside the same run made again in the way in which the sweep makes it, so that its figures have to be the
 * same to the last digit on a computer of the same kind.
 *
 * @param figures how many figures were compared
 * @param rounded how many of these differ by 1e-9 of themselves, or of one of their unit, at most, as another processor, Java
 *     or build of the program makes them
 * @param differences what differs by more, each with both values
 */
public record RepeatedRun(int figures, int rounded, List<String> differences) {

    /** Largest difference that passes for rounding, of the larger number or of one of its unit. */
    private static final double ROUNDING = 1e-9;

    /** Copies the list. */
    public RepeatedRun {
        differences = List.copyOf(differences);
    }

    /**
     * Makes a run again.
     *
     * @param sweep the sweep that the run is of
     * @param recorded the run, finished or failed
     * @param program program and version
     * @throws IllegalArgumentException if the run has not been made yet
     */
    public static RepeatedRun of(SweepDocument sweep, StoredRun recorded, String program) {
        if (recorded.status() == StoredRun.Status.PLANNED) {
            throw new IllegalArgumentException("run " + recorded.number() + " has not been made yet");
        }
        RunMaker maker = new RunMaker(sweep, new RunList(sweep), program, 1, Optional.empty());
        return compared(sweep, recorded, maker.outcome(recorded.number()));
    }

    /** A recorded run beside what came of it now. */
    static RepeatedRun compared(SweepDocument sweep, StoredRun recorded, RunOutcome now) {
        String before = ending(recorded.status() == StoredRun.Status.FAILED, recorded.reason(), recorded.way());
        String again = ending(now.failed(), now.reason(), now.way());
        List<String> differences = new ArrayList<>();
        if (!before.equals(again)) {
            differences.add("how it ended: " + before + " in the store, " + again + " now");
        }
        if (recorded.status() == StoredRun.Status.FAILED || now.failed()) {
            return new RepeatedRun(0, 0, differences);
        }
        int rounded = 0;
        for (int i = 0; i < now.figures().length; i++) {
            double kept = recorded.figures()[i];
            double found = now.figures()[i];
            if (isRounding(kept, found)) {
                rounded++;
            } else if (Double.compare(kept, found) != 0) {
                differences.add(sweep.figures().get(i).heading() + ": " + words(kept) + " in the store, " + words(found)
                        + " now");
            }
        }
        return new RepeatedRun(now.figures().length, rounded, differences);
    }

    private static String ending(boolean failed, String reason, String way) {
        return failed ? "failed (" + FailedRuns.inOneLine(reason) + ")" : "finished by " + way;
    }

    /** Whether two numbers differ, and by rounding alone; NaN stands for none. */
    private static boolean isRounding(double one, double other) {
        double difference = Math.abs(one - other);
        return difference > 0 && difference <= ROUNDING * Math.max(1, Math.max(Math.abs(one), Math.abs(other)));
    }

    private static String words(double number) {
        return Double.isNaN(number) ? "none" : Double.toString(number);
    }
}

package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What was under way when a run started, and what boundaries and recharge do in it: the fall of head that there would have been
 * had every bore and spring gone on as in the state that the run started from.
 */
final class Drift {

    private final UndisturbedHeads undisturbed;
    private final double[] atStart;
    private final double[] held;

    /** What discharges of the start do at once to heads at walls, which those of the start count already (m). */
    private final double[] atOnce;

    /**
     * Drift of a run.
     *
     * @param modes responses of the problem
     * @param undisturbed heads without bores and springs
     * @param held discharge of each bore and spring at the start of which heads at the start know nothing: zero where they are
     *     the steady ones of these discharges (m³/d)
     */
    Drift(SharedModes modes, UndisturbedHeads undisturbed, double[] held) {
        this.undisturbed = undisturbed;
        this.held = held.clone();
        atStart = undisturbed.atStart();
        atOnce = new double[atStart.length];
        for (int receptor = 0; receptor < atOnce.length; receptor++) {
            for (int cause = 0; cause < held.length; cause++) {
                atOnce[receptor] += modes.atOnce(receptor, cause) * held[cause];
            }
        }
    }

    /** Whether anything is under way. */
    boolean isAny() {
        return !undisturbed.sources().isEmpty() || Arrays.stream(held).anyMatch(rate -> rate != 0);
    }

    /** Discharges with those of the start (m³/d). */
    double[] withHeld(double[] changes) {
        double[] all = changes.clone();
        Arrays.setAll(all, i -> all[i] + held[i]);
        return all;
    }

    /**
     * Fall of head at each receptor since the start but for the drawdown by {@linkplain #withHeld what goes on} (m).
     *
     * @param day the day (d)
     * @return a new array
     */
    double[] drawdown(double day) {
        return drawdown(day, IntStream.range(0, atStart.length).toArray());
    }

    /**
     * The same at some receptors, for a step asks only for those whose discharge follows head.
     *
     * @param day the day (d)
     * @param receptors the receptors
     * @return fall at each of them (m), each what {@link #drawdown(double)} gives
     */
    double[] drawdown(double day, int[] receptors) {
        double[] now = undisturbed.on(day, receptors);
        double[] fall = new double[receptors.length];
        Arrays.setAll(fall, i -> atStart[receptors[i]] - now[i] - atOnce[receptors[i]]);
        return fall;
    }
}

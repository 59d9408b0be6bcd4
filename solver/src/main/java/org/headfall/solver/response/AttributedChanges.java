package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.wording.PlainNumber;

/**
 * What one change a bore has done to discharges and heads, followed through the steps of a run: the change of the bore
 * itself, and what bores and springs that follow head give less or more for it ({@link Attribution}). Used by one thread.
 */
final class AttributedChanges {

    private final Run run;
    private final Change change;
    private final int points;

    /**
     * A superposition a bore, then one of what all bores did together, then one of what was under way without them
     * ({@link Drift}). By the last two it is known what is explained.
     */
    private final Superposition[] byCause;

    /** What each cause has changed of the discharge of each point, {@code [cause][point]} (m³/d). */
    private double[][] changes;

    /** Part of each point at the end of the step before; all follow head at the start. */
    private PointRules.Part[] before;

    /**
     * The run that is split.
     *
     * @param rules rules of its bores and springs
     * @param modes its responses
     * @param history its discharges and heads
     * @param startRates discharge of each bore and spring in the state it started from (m³/d)
     * @param bores number of bores
     * @param drift what was under way without a change by any bore
     */
    @SuppressWarnings("ArrayRecordComponent") // handed on and never compared
    record Run(PointRules rules, SharedModes modes, RateHistory history, double[] startRates, int bores, Drift drift) {}

    /** The change of a bore that is followed. */
    @FunctionalInterface
    interface Change {

        /**
         * The change at the end of a step.
         *
         * @param step the step
         * @param bore the bore, which does what is asked of it
         * @param discharge its discharge (m³/d)
         * @return the change (m³/d)
         */
        double of(int step, int bore, double discharge);
    }

    /**
     * What was done by a day.
     *
     * @param drawdown drawdown (m): {@code [receptor][bore]}
     * @param loss discharge less than without the change (m³/d): {@code [bore or spring][bore]}
     * @param driftDrawdown drawdown at each receptor by what was under way without the bores (m)
     * @param driftLoss discharge less by it, of each bore or spring (m³/d)
     * @param followed whether a bore or spring gives less or more because of its head
     */
    @SuppressWarnings("ArrayRecordComponent") // handed on and never compared
    record OnDay(
            double[][] drawdown, double[][] loss, double[] driftDrawdown, double[] driftLoss, boolean[] followed) {}

    AttributedChanges(Run run, Change change) {
        this.run = run;
        this.change = change;
        points = run.history().points();
        StepFactors factors = new StepFactors(run.modes());
        byCause = IntStream.range(0, run.bores() + 2)
                .mapToObj(cause -> new Superposition(factors))
                .toArray(Superposition[]::new);
        changes = new double[byCause.length][points];
        before = new PointRules.Part[points];
        Arrays.fill(before, PointRules.Part.FOLLOWS);
    }

    /**
     * Follows the changes, once.
     *
     * @param days days on which steps of the run end, increasing
     * @return what was done by each day
     * @throws IllegalArgumentException if no step ends on a day
     */
    OnDay[] on(double[] days) {
        RateHistory history = run.history();
        OnDay[] found = new OnDay[days.length];
        int next = 0;
        for (int step = 0; step < history.steps() && next < days.length; step++) {
            PointRules.Part[] parts = advance(step);
            if (history.startOf(step + 1) == days[next]) {
                found[next] = read(parts, days[next]);
                next++;
            }
        }
        if (next < days.length) {
            throw new IllegalArgumentException("no step of the run ends on day " + PlainNumber.of(days[next]));
        }
        return found;
    }

    private PointRules.Part[] advance(int step) {
        RateHistory history = run.history();
        double end = history.startOf(step + 1);
        double length = end - history.startOf(step);
        double moment = Math.nextDown(end);
        boolean anew = history.startsAnew(step);
        double[] discharge = new double[points];
        Arrays.setAll(discharge, i -> history.straightenedRateAtEnd(step, i));
        PointRules.Part[] parts = run.rules().parts(moment, discharge, run.startRates());
        int[] following = IntStream.range(0, points)
                .filter(i -> parts[i] == PointRules.Part.FOLLOWS)
                .toArray();
        double[][] former = changes;
        changes = known(step, parts, discharge);
        int[] stopping = IntStream.range(0, points)
                .filter(i -> parts[i] == PointRules.Part.STOPPED && before[i] != PointRules.Part.STOPPED)
                .toArray();
        int[] causes = IntStream.range(0, byCause.length)
                .filter(cause -> byCause[cause].hasTaken()
                        || isAny(changes[cause])
                        || (cause == drift() && run.drift().isAny()))
                .toArray();
        for (int cause : causes) {
            double[] begin = anew ? changes[cause].clone() : former[cause];
            if (cause == drift()) {
                byCause[cause].lookAhead(
                        length, run.drift().withHeld(begin), run.drift().withHeld(changes[cause]));
            } else {
                byCause[cause].lookAhead(length, begin, changes[cause]);
            }
        }
        if (stopping.length > 0 && causes.length > 0) {
            int[] both = IntStream.concat(Arrays.stream(following), Arrays.stream(stopping))
                    .toArray();
            follow(end, causes, both, run.rules().chords(moment, both, run.startRates(), discharge), anew);
            limit(causes, stopping, discharge, former, anew);
        }
        if (following.length > 0 && causes.length > 0) {
            follow(end, causes, following, run.rules().chords(moment, following, run.startRates(), discharge), anew);
        }
        for (int cause : causes) {
            byCause[cause].accept();
        }
        before = parts;
        return parts;
    }

    /** Index of what was under way without the bores. */
    private int drift() {
        return run.bores() + 1;
    }

    private static boolean isAny(double[] values) {
        return Arrays.stream(values).anyMatch(value -> value != 0);
    }

    /**
     * Changes at the end of a step; of points that follow head, or stop in the step, those before, to be put right. Points that
     * have stopped keep theirs.
     */
    private double[][] known(int step, PointRules.Part[] parts, double[] discharge) {
        int all = run.bores();
        double[][] known = new double[byCause.length][points];
        for (int i = 0; i < points; i++) {
            if (parts[i] != PointRules.Part.GIVEN) {
                for (int cause = 0; cause < known.length; cause++) {
                    known[cause][i] = changes[cause][i];
                }
            } else if (i < all) {
                known[i][i] = change.of(step, i, discharge[i]);
                known[all][i] = discharge[i] - run.startRates()[i];
            }
        }
        return known;
    }

    /**
     * Takes from points that stop in the step what they cannot lose. They followed head until some moment in the step; followed
     * to its end along the same chord they would give less than nothing. So their changes go only so far, from those at the
     * beginning of the step (from none where something jumped there) to those at its end, that all of them are the whole. With
     * the changes at the beginning, how much is put down to causes hung on where steps happen to end: all that a point still
     * gave there was put down to none. Where causes explain less than the whole, as where an outlet has been raised, the rest
     * is left over.
     */
    private void limit(int[] causes, int[] stopping, double[] discharge, double[][] former, boolean anew) {
        int all = run.bores();
        for (int point : stopping) {
            double share = anew || before[point] != PointRules.Part.FOLLOWS ? 0 : 1;
            double begin = share * (former[all][point] + former[drift()][point]);
            double end = changes[all][point] + changes[drift()][point];
            double whole = discharge[point] - run.startRates()[point];
            // All are below zero: the smaller is the larger loss.
            double surplus = end < Math.min(begin, whole) ? Math.min(1, (whole - end) / (begin - end)) : 0;
            for (int cause : causes) {
                double given = surplus * (share * former[cause][point] - changes[cause][point]);
                changes[cause][point] += given;
                byCause[cause].addToLook(point, given, anew);
            }
        }
    }

    /**
     * What the points that follow head give less or more by each cause: {@code (chord + K) x = -s - chord q}, with what is
     * missing for head and discharge to agree on the right and one column a cause.
     */
    private void follow(double day, int[] causes, int[] following, double[] chords, boolean anew) {
        DMatrixRMaj right = new DMatrixRMaj(following.length, causes.length);
        for (int k = 0; k < causes.length; k++) {
            double[] drawdown = byCause[causes[k]].drawdowns(following);
            if (causes[k] == drift()) {
                double[] further = run.drift().drawdown(day, following);
                Arrays.setAll(drawdown, i -> drawdown[i] + further[i]);
            }
            for (int i = 0; i < following.length; i++) {
                double known = changes[causes[k]][following[i]];
                right.set(i, k, -drawdown[i] - chords[i] * known);
            }
        }
        DMatrixRMaj solved = new DMatrixRMaj(following.length, causes.length);
        ChordSystem.solver(byCause[causes[0]], following, chords, anew).solve(right, solved);
        for (int i = 0; i < following.length; i++) {
            for (int k = 0; k < causes.length; k++) {
                changes[causes[k]][following[i]] += solved.get(i, k);
                byCause[causes[k]].addToLook(following[i], solved.get(i, k), anew);
            }
        }
    }

    private OnDay read(PointRules.Part[] parts, double day) {
        int receptors = run.modes().receptors();
        double[][] drawdown = new double[receptors][run.bores()];
        double[][] loss = new double[points][run.bores()];
        boolean[] followed = new boolean[points];
        for (int cause = 0; cause < run.bores(); cause++) {
            double[] byThis = byCause[cause].drawdowns();
            for (int receptor = 0; receptor < receptors; receptor++) {
                drawdown[receptor][cause] = byThis[receptor];
            }
            for (int i = 0; i < points; i++) {
                loss[i][cause] = -changes[cause][i];
            }
        }
        for (int i = 0; i < points; i++) {
            followed[i] = parts[i] != PointRules.Part.GIVEN;
        }
        double[] driftDrawdown = run.drift().drawdown(day);
        double[] given = byCause[drift()].drawdowns();
        Arrays.setAll(driftDrawdown, receptor -> driftDrawdown[receptor] + given[receptor]);
        double[] driftLoss = new double[points];
        Arrays.setAll(driftLoss, i -> -changes[drift()][i]);
        return new OnDay(drawdown, loss, driftDrawdown, driftLoss, followed);
    }
}

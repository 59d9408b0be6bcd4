package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Discharges of all causes carried through time, with the drawdown that they make. In each step a discharge runs straight
 * from a value at its beginning to one at its end; it may jump between steps. With y the discharge as a mode feels it,
 * {@code dy/dt = mu (q - y)}, drawdown is {@code R(0) q + sum_m w_m y_m}; over a step of length t, x = mu t,
 *
 * <pre>{@code y = y0 exp(-x) + q0 (1 - exp(-x)) + (q1 - q0) (1 - (1 - exp(-x)) / x)}</pre>
 *
 * <p>which is exact. Where nothing is left of {@code exp(-x)} that is {@code q1 - (q1 - q0) / x}, so the fastest modes are
 * added up beforehand, and what they feel is written down only when a shorter step asks for it. Nothing has been taken before
 * the first step.
 */
final class Superposition {

    private final SharedModes modes;
    private final int count;
    private double[] felt;
    private double[] next;

    /** What modes feel at the end of the step last looked at: {@code next}, once it has come to pass {@code felt}. */
    private double[] looked;

    private final StepFactors factors;
    private final boolean[] taken;
    private final double[] end;
    private final double[] growth;
    private double length = Double.POSITIVE_INFINITY;
    private int settled;

    /** Of the last step that came to pass: by them it is known what modes feel that it let settle. */
    private final double[] pastEnd;

    private final double[] pastGrowth;
    private double pastLength = Double.POSITIVE_INFINITY;

    /** How many of the fastest modes had settled at its end; what they feel does not stand in {@code felt}. */
    private int pastSettled;

    Superposition(SharedModes modes) {
        this(new StepFactors(modes));
    }

    /** Superposition that takes the same steps as others. */
    Superposition(StepFactors factors) {
        this.factors = factors;
        modes = factors.modes();
        count = modes.rates().length;
        felt = new double[modes.causes() * count];
        next = new double[felt.length];
        looked = felt;
        end = new double[modes.causes()];
        growth = new double[end.length];
        taken = new boolean[end.length];
        pastEnd = new double[end.length];
        pastGrowth = new double[end.length];
    }

    /** Another that has come as far and goes on by itself. */
    Superposition copy() {
        Superposition copy = new Superposition(modes);
        System.arraycopy(felt, 0, copy.felt, 0, felt.length);
        System.arraycopy(taken, 0, copy.taken, 0, taken.length);
        System.arraycopy(end, 0, copy.end, 0, end.length);
        System.arraycopy(growth, 0, copy.growth, 0, growth.length);
        copy.length = length;
        copy.settled = settled;
        System.arraycopy(pastEnd, 0, copy.pastEnd, 0, end.length);
        System.arraycopy(pastGrowth, 0, copy.pastGrowth, 0, end.length);
        copy.pastLength = pastLength;
        copy.pastSettled = pastSettled;
        return copy;
    }

    /**
     * Looks ahead to the end of a step.
     *
     * @param stepLength its length (d), positive
     * @param begin discharge of each cause at its beginning (m³/d)
     * @param atEnd discharge of each cause at its end (m³/d)
     */
    void lookAhead(double stepLength, double[] begin, double[] atEnd) {
        factors.prepare(stepLength);
        length = stepLength;
        settled = factors.settled();
        recallSettled();
        double[] before = felt;
        double[] after = next;
        double[] rest = factors.rest();
        double[] held = factors.held();
        double[] grown = factors.grown();
        for (int cause = 0; cause < end.length; cause++) {
            // What has never taken anything needs no account.
            taken[cause] |= begin[cause] != 0 || atEnd[cause] != 0;
            if (!taken[cause]) {
                continue;
            }
            double grows = atEnd[cause] - begin[cause];
            growth[cause] = grows;
            int from = cause * count;
            double first = begin[cause];
            for (int m = settled; m < rest.length; m++) {
                after[from + m] = before[from + m] * rest[m] + first * held[m] + grows * grown[m];
            }
        }
        looked = after;
        System.arraycopy(atEnd, 0, end, 0, end.length);
    }

    /** Writes down what modes feel that had settled and no longer do in a step as short as that which is looked at. */
    private void recallSettled() {
        double[] rates = modes.rates();
        for (int m = settled; m < pastSettled; m++) {
            for (int cause = 0; cause < end.length; cause++) {
                felt[cause * count + m] = pastEnd[cause] - pastGrowth[cause] / (rates[m] * pastLength);
            }
        }
        pastSettled = Math.min(pastSettled, settled);
    }

    /**
     * Adds to what a cause is taken to discharge in the step last looked at.
     *
     * @param cause the cause
     * @param discharge what it discharges more at the end of the step (m³/d)
     * @param atOnce whether it does so throughout the step, or grows to it evenly
     */
    void addToLook(int cause, double discharge, boolean atOnce) {
        taken[cause] |= discharge != 0;
        double[] onset = atOnce ? factors.held() : factors.grown();
        int from = cause * count;
        for (int m = settled; m < onset.length; m++) {
            looked[from + m] += discharge * onset[m];
        }
        end[cause] += discharge;
        growth[cause] += atOnce ? 0 : discharge;
    }

    /** Whether anything was ever discharged. */
    boolean hasTaken() {
        for (boolean one : taken) {
            if (one) {
                return true;
            }
        }
        return false;
    }

    /** Drawdown at a receptor at the end of the step last looked at (m). */
    double drawdown(int receptor) {
        double sum = 0;
        for (int cause = 0; cause < end.length; cause++) {
            sum += drawdown(receptor, cause);
        }
        return sum;
    }

    /** Drawdown at a receptor by one cause alone at the end of the step last looked at (m). */
    double drawdown(int receptor, int cause) {
        if (!taken[cause]) {
            return 0;
        }
        double[] weights = modes.weights(receptor);
        double[] numbers = looked;
        double a = bySettled(receptor, cause);
        double b = byGrowth(receptor, cause);
        int last = (cause + 1) * count;
        int i = cause * count + settled;
        // Two sums that do not wait for each other.
        for (; i < last - 1; i += 2) {
            a += weights[i] * numbers[i];
            b += weights[i + 1] * numbers[i + 1];
        }
        return i < last ? a + b + weights[i] * numbers[i] : a + b;
    }

    /** Drawdown of all receptors at the end of the step last looked at (m). */
    double[] drawdowns() {
        int[] all = new int[modes.receptors()];
        Arrays.setAll(all, receptor -> receptor);
        return drawdowns(all);
    }

    /**
     * Drawdown at some receptors at the end of the step last looked at, each what {@link #drawdown(int)} gives.
     *
     * @param receptors the receptors
     * @return drawdown at each (m)
     */
    double[] drawdowns(int[] receptors) {
        double[] sums = new double[receptors.length];
        int i = 0;
        for (; i < receptors.length - 1; i += 2) {
            for (int cause = 0; cause < end.length; cause++) {
                if (taken[cause]) {
                    addToTwo(receptors, i, cause, sums);
                }
            }
        }
        if (i < receptors.length) {
            sums[i] = drawdown(receptors[i]);
        }
        return sums;
    }

    /** Adds the drawdown by a cause to that of two receptors, so that what modes feel is read once for both. */
    private void addToTwo(int[] receptors, int at, int cause, double[] sums) {
        int first = receptors[at];
        int second = receptors[at + 1];
        double[] ofFirst = modes.weights(first);
        double[] ofSecond = modes.weights(second);
        double[] numbers = looked;
        double a = bySettled(first, cause);
        double b = byGrowth(first, cause);
        double c = bySettled(second, cause);
        double d = byGrowth(second, cause);
        int last = (cause + 1) * count;
        int i = cause * count + settled;
        for (; i < last - 1; i += 2) {
            double even = numbers[i];
            double odd = numbers[i + 1];
            a += ofFirst[i] * even;
            b += ofFirst[i + 1] * odd;
            c += ofSecond[i] * even;
            d += ofSecond[i + 1] * odd;
        }
        sums[at] += i < last ? a + b + ofFirst[i] * numbers[i] : a + b;
        sums[at + 1] += i < last ? c + d + ofSecond[i] * numbers[i] : c + d;
    }

    private double bySettled(int receptor, int cause) {
        return (modes.atOnce(receptor, cause) + modes.sum(receptor, cause, settled)) * end[cause];
    }

    private double byGrowth(int receptor, int cause) {
        return -modes.sumOverRates(receptor, cause, settled) * growth[cause] / length;
    }

    /**
     * Drawdown at the end of the step last looked at by a further unit discharge of each of some causes.
     *
     * @param receptor the receptor
     * @param causes the causes: bores, springs and other sources by their numbers
     * @param first how many of them, from the first on
     * @param atOnce whether it is taken throughout the step, or grows evenly from none
     * @param onsets receives drawdown per discharge of each (d/m²)
     */
    void onsets(int receptor, int[] causes, int first, boolean atOnce, double[] onsets) {
        int i = 0;
        for (; i < first - 3; i += 4) {
            fourOnsets(receptor, causes, i, atOnce, onsets);
        }
        for (; i < first; i++) {
            onsets[i] = onset(receptor, causes[i], atOnce);
        }
    }

    /** Four sums that do not wait for each other, each in the order of {@link #onset}. */
    private void fourOnsets(int receptor, int[] causes, int at, boolean atOnce, double[] onsets) {
        double[] weights = modes.weights(receptor);
        double[] onset = atOnce ? factors.held() : factors.grown();
        double a = settledOnset(receptor, causes[at], atOnce);
        double b = settledOnset(receptor, causes[at + 1], atOnce);
        double c = settledOnset(receptor, causes[at + 2], atOnce);
        double d = settledOnset(receptor, causes[at + 3], atOnce);
        int fromA = causes[at] * count;
        int fromB = causes[at + 1] * count;
        int fromC = causes[at + 2] * count;
        int fromD = causes[at + 3] * count;
        for (int m = settled; m < onset.length; m++) {
            double one = onset[m];
            a += weights[fromA + m] * one;
            b += weights[fromB + m] * one;
            c += weights[fromC + m] * one;
            d += weights[fromD + m] * one;
        }
        onsets[at] = a;
        onsets[at + 1] = b;
        onsets[at + 2] = c;
        onsets[at + 3] = d;
    }

    private double settledOnset(int receptor, int cause, boolean atOnce) {
        double sum = modes.atOnce(receptor, cause) + modes.sum(receptor, cause, settled);
        return atOnce ? sum : sum - modes.sumOverRates(receptor, cause, settled) / length;
    }

    private double onset(int receptor, int cause, boolean atOnce) {
        double[] weights = modes.weights(receptor);
        double[] onset = atOnce ? factors.held() : factors.grown();
        double sum = settledOnset(receptor, cause, atOnce);
        int from = cause * count;
        for (int m = settled; m < onset.length; m++) {
            sum += weights[from + m] * onset[m];
        }
        return sum;
    }

    /** The step last looked at has come to pass. */
    void accept() {
        double[] before = felt;
        felt = next;
        next = before;
        System.arraycopy(end, 0, pastEnd, 0, end.length);
        System.arraycopy(growth, 0, pastGrowth, 0, end.length);
        pastLength = length;
        pastSettled = settled;
    }
}

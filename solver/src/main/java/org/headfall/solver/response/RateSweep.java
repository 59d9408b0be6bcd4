package org.headfall.solver.response;

import java.util.Arrays;
import org.headfall.solver.linear.WorkerTeam;

/**
 * Drawdown by very many sets of rates, each constant within steps of equal length such as months. Rates only: nothing
 * follows head. Sets are worked through side by side in blocks, so that every loop runs over sets and is vectorised; each
 * mode of the responses is one number a cause and set ({@link SharedModes}). Immutable; may be used by several threads.
 */
public final class RateSweep {

    /** Sets worked through side by side. */
    public static final int BLOCK = 32;

    private final SharedModes modes;
    private final int steps;
    private final int causes;
    private final int receptors;
    private final double[] rest;

    /** Weight of each row of a block at each receptor; a row is a cause's discharge now, or a cause as a mode feels it. */
    private final double[] weights;

    private final int rows;

    /**
     * Sweep with steps of a length.
     *
     * @param responses the responses
     * @param step length of a step (d)
     * @param steps number of steps; all together within the time for which responses are known
     * @throws IllegalArgumentException if they are not
     */
    public RateSweep(UnitResponses responses, double step, int steps) {
        modes = SharedModes.atMultiples(responses.table(), step, steps);
        this.steps = steps;
        causes = modes.causes();
        receptors = modes.receptors();
        rest = new double[modes.rates().length];
        for (int m = 0; m < rest.length; m++) {
            rest[m] = Math.exp(-modes.rates()[m] * step);
        }
        // Four rows at a time are added up; those that fill up have no weight.
        int used = causes * (rest.length + 1);
        rows = (used + 3) / 4 * 4;
        weights = new double[receptors * rows];
        for (int receptor = 0; receptor < receptors; receptor++) {
            for (int cause = 0; cause < causes; cause++) {
                int row = receptor * rows + cause * (rest.length + 1);
                weights[row] = modes.atOnce(receptor, cause);
                System.arraycopy(modes.weights(receptor), cause * rest.length, weights, row + 1, rest.length);
            }
        }
    }

    /** The sets of rates. */
    @FunctionalInterface
    public interface Rates {

        /**
         * Rate of a cause in a step.
         *
         * @param set the set
         * @param step the step
         * @param cause the bore or spring
         * @return discharge (m³/d)
         */
        double of(int set, int step, int cause);
    }

    /** Is handed drawdowns as they are found, block by block, by several threads. */
    @FunctionalInterface
    public interface Reader {

        /**
         * Drawdowns at the end of a step.
         *
         * @param firstSet first set of the block
         * @param sets sets in the block
         * @param step the step
         * @param drawdown drawdown (m) of a set s of the block at a receptor: {@code [receptor BLOCK + s]}; valid during
         *     the call only
         */
        void read(int firstSet, int sets, int step, double[] drawdown);
    }

    /**
     * Finds the drawdowns of all sets.
     *
     * @param sets number of sets
     * @param rates their rates; asked by several threads
     * @param reader receives all drawdowns
     * @param team threads
     */
    public void run(int sets, Rates rates, Reader reader, WorkerTeam team) {
        int blocks = (sets + BLOCK - 1) / BLOCK;
        team.split(blocks, 1, (first, end) -> {
            double[] state = new double[rows * BLOCK];
            double[] drawdown = new double[receptors * BLOCK];
            for (int block = first; block < end; block++) {
                Arrays.fill(state, 0);
                int firstSet = block * BLOCK;
                int count = Math.min(BLOCK, sets - firstSet);
                for (int step = 0; step < steps; step++) {
                    advance(state, firstSet, count, step, rates);
                    readOut(state, drawdown);
                    reader.read(firstSet, count, step, drawdown);
                }
            }
        });
    }

    private void advance(double[] state, int firstSet, int count, int step, Rates rates) {
        for (int cause = 0; cause < causes; cause++) {
            int now = cause * (rest.length + 1) * BLOCK;
            for (int s = 0; s < count; s++) {
                state[now + s] = rates.of(firstSet + s, step, cause);
            }
            for (int m = 0; m < rest.length; m++) {
                double left = rest[m];
                double come = 1 - left;
                int row = now + (m + 1) * BLOCK;
                for (int s = 0; s < BLOCK; s++) {
                    state[row + s] = left * state[row + s] + come * state[now + s];
                }
            }
        }
    }

    private void readOut(double[] state, double[] drawdown) {
        for (int receptor = 0; receptor < receptors; receptor++) {
            int out = receptor * BLOCK;
            for (int s = 0; s < BLOCK; s++) {
                drawdown[out + s] = 0;
            }
            for (int row = 0; row < rows; row += 4) {
                addFour(state, drawdown, out, receptor * rows + row, row * BLOCK);
            }
        }
    }

    /** Adds four weighted rows at once, so that sums are loaded and stored a quarter as often. */
    private void addFour(double[] state, double[] drawdown, int out, int weight, int from) {
        double a = weights[weight];
        double b = weights[weight + 1];
        double c = weights[weight + 2];
        double d = weights[weight + 3];
        for (int s = 0; s < BLOCK; s++) {
            drawdown[out + s] += a * state[from + s]
                    + b * state[from + BLOCK + s]
                    + c * state[from + 2 * BLOCK + s]
                    + d * state[from + 3 * BLOCK + s];
        }
    }

    /** Largest difference of the responses used to those given, at the end of any step (d/m²). */
    public double misfit() {
        return modes.misfit();
    }
}

package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Responses {@code a ln(1 + t / t0)}, with which superposition is known by hand. */
class SuperpositionTest {

    private static final int POINTS = 7;
    private static final double TO_FIT = 2e-8;

    /** From far below the fastest mode to the slowest: no mode has settled, some have, most have. */
    private static final double[] LENGTHS = {0.002, 0.5, 30, 400, 3000};

    private static double strength(int receptor, int cause) {
        return 1e-3 / (1 + Math.abs(receptor - cause));
    }

    private static double response(int receptor, int cause, double time) {
        return strength(receptor, cause) * Math.log1p(time / (0.1 + Math.abs(receptor - cause)));
    }

    /**
     * A point named twice stands for two that do the same to each other: the system has two equal rows. With a chord of their
     * own they are told apart.
     */
    @Test
    void pointsThatDoTheSameCannotBeToldApart() {
        Superposition superposition = new Superposition(modes());
        superposition.lookAhead(30, new double[POINTS], new double[POINTS]);
        int[] following = {1, 4, 1};
        assertThrows(
                EffectsAlikeException.class,
                () -> ChordSystem.solver(superposition, following, new double[] {0, 0, 0}, true));
        double[] chords = {1e-4, 1e-4, 1e-4};
        assertDoesNotThrow(() -> ChordSystem.solver(superposition, following, chords, true));
    }

    private static SharedModes modes() {
        double[] times = new double[200];
        Arrays.setAll(times, k -> 1e-3 * Math.pow(10, k / 28.0));
        double[][] values = new double[times.length][POINTS * POINTS];
        double[][] rates = new double[times.length][POINTS * POINTS];
        for (int k = 0; k < times.length; k++) {
            for (int cause = 0; cause < POINTS; cause++) {
                for (int receptor = 0; receptor < POINTS; receptor++) {
                    int curve = cause * POINTS + receptor;
                    values[k][curve] = response(receptor, cause, times[k]);
                    rates[k][curve] = strength(receptor, cause) / (0.1 + Math.abs(receptor - cause) + times[k]);
                }
            }
        }
        return SharedModes.of(new ResponseTable(POINTS, times, new double[POINTS * POINTS], values, rates));
    }

    /** Discharges that hold throughout each step: the sum of a logarithm a change of discharge, cause and receptor. */
    @Test
    void drawdownIsTheSumOfWhatEachChangeOfDischargeMakes() {
        Superposition superposition = new Superposition(modes());
        Random random = new Random(20_260_701);
        double[][] rates = new double[LENGTHS.length][];
        for (int step = 0; step < LENGTHS.length; step++) {
            rates[step] = random.doubles(POINTS).toArray();
            superposition.lookAhead(LENGTHS[step], rates[step], rates[step]);
            double[] found = superposition.drawdowns();
            for (int receptor = 0; receptor < POINTS; receptor++) {
                assertEquals(byHand(receptor, step, rates), found[receptor], TO_FIT, "step " + step);
            }
            superposition.accept();
        }
    }

    private static double byHand(int receptor, int last, double[][] rates) {
        double sum = 0;
        double time = 0;
        for (int step = last; step >= 0; step--) {
            time += LENGTHS[step];
            for (int cause = 0; cause < POINTS; cause++) {
                double before = step == 0 ? 0 : rates[step - 1][cause];
                sum += (rates[step][cause] - before) * response(receptor, cause, time);
            }
        }
        return sum;
    }

    /** Several receptors at once give what each gives alone, bit for bit, in any order, even or odd in number. */
    @Test
    void receptorsTogetherGiveWhatEachGivesAlone() {
        Superposition superposition = new Superposition(modes());
        double[] begin = {1, 0, 0, -2, 3, 0, 0.5};
        double[] atEnd = {2, 0, 1, -2, 0, 0, 4};
        for (double length : LENGTHS) {
            superposition.lookAhead(length, begin, atEnd);
            for (int[] chosen : new int[][] {{}, {6}, {5, 2}, {4, 0, 3}, {0, 1, 2, 3, 4, 5, 6}}) {
                double[] together = superposition.drawdowns(chosen);
                for (int i = 0; i < chosen.length; i++) {
                    assertEquals(superposition.drawdown(chosen[i]), together[i], 0.0);
                }
            }
            superposition.accept();
        }
    }

    /** The onset of a cause is what a further unit of discharge adds to drawdown. */
    @Test
    void onsetIsWhatAFurtherUnitAdds() {
        SharedModes modes = modes();
        int[] causes = {3, 0, 6, 1, 5, 2};
        for (double length : LENGTHS) {
            for (boolean atOnce : new boolean[] {true, false}) {
                Superposition superposition = new Superposition(modes);
                superposition.lookAhead(length, new double[POINTS], new double[POINTS]);
                double[] onsets = new double[causes.length];
                superposition.onsets(4, causes, causes.length, atOnce, onsets);
                double before = 0;
                for (int i = 0; i < causes.length; i++) {
                    superposition.addToLook(causes[i], 1, atOnce);
                    double after = superposition.drawdown(4);
                    assertEquals(after - before, onsets[i], 1e-15, "cause " + causes[i] + " in " + length + " d");
                    before = after;
                }
                if (atOnce) {
                    assertEquals(response(4, 3, length), onsets[0], TO_FIT);
                }
            }
        }
    }
}

package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.headfall.solver.flow.TransferValues;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference are direct solves in Laplace space: of the shifts that the model is made of, and of others between them. */
class JointModelTest {

    private static final double[] SHIFTS = {0, 10, 1, 0.1, 0.01, 1e-3, 1e-4};
    private static final double[] FINER = {0, 10, 4, 1, 0.4, 0.1, 0.04, 0.01, 4e-3, 1e-3, 4e-4, 1e-4};
    private static final double[] BETWEEN = {2, 0.2, 0.02, 0.002, 2e-4};

    /** Transfer function of a model from one of its sources to another (d/m²). */
    private static double transfer(JointModes modes, int receptor, int source, double shift) {
        double sum = 0;
        for (int mode = 0; mode < modes.count(); mode++) {
            sum += modes.drive().get(mode, receptor) * modes.drive().get(mode, source) / (shift + modes.decay()[mode]);
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void meetsWhatWasSolvedForAtItsOwnShifts(boolean bed) {
        SolvedField field = SolvedField.of(SolvedField.field(bed), SHIFTS);
        JointModes modes = field.model(1e-13).modes(1e-13);
        for (int k = 0; k < SHIFTS.length; k++) {
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    double solved = field.transfer().values(i, j)[k];
                    double scale = Math.sqrt(
                            field.transfer().values(i, i)[k] * field.transfer().values(j, j)[k]);
                    assertEquals(
                            solved, transfer(modes, i, j, SHIFTS[k]), 1e-8 * scale, i + ", " + j + " at " + SHIFTS[k]);
                }
            }
        }
    }

    /**
     * Between them the model errs in second order, by too little at the source itself: it is a Galerkin projection. Twice as many
     * shifts leave less than a tenth of what these do.
     */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void convergesToDirectSolvesBetween(boolean bed) {
        TransferValues direct = SolvedField.of(SolvedField.field(bed), BETWEEN).transfer();
        double coarse = worst(SolvedField.of(SolvedField.field(bed), SHIFTS), direct);
        double fine = worst(SolvedField.of(SolvedField.field(bed), FINER), direct);
        assertTrue(coarse < 5e-4, "off by " + coarse);
        assertTrue(fine < 0.1 * coarse, "off by " + fine + " of " + coarse);
    }

    /** Largest error between the shifts, as a share of what both places feel of themselves. */
    private static double worst(SolvedField field, TransferValues direct) {
        JointModes modes = field.model(1e-13).modes(1e-13);
        double worst = 0;
        for (int k = 0; k < BETWEEN.length; k++) {
            for (int i = 0; i < 3; i++) {
                double own = direct.values(i, i)[k];
                assertTrue(transfer(modes, i, i, BETWEEN[k]) <= own * (1 + 1e-9), "too much at " + BETWEEN[k]);
                for (int j = 0; j < 3; j++) {
                    double scale = Math.sqrt(own * direct.values(j, j)[k]);
                    double off = Math.abs(direct.values(i, j)[k] - transfer(modes, i, j, BETWEEN[k])) / scale;
                    worst = Math.max(worst, off);
                }
            }
        }
        return worst;
    }

    /** What modes of a steady drive at a shift add up to is the solution there, in every cell; single precision is left. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void weightsGiveTheSolutionInEveryCell(boolean bed) {
        SolvedField field = SolvedField.of(SolvedField.field(bed), SHIFTS);
        JointModes modes = field.model(1e-13).modes(1e-13);
        int[] cells = new int[field.problem().aquifer().grid().cellCount()];
        Arrays.setAll(cells, cell -> cell);
        for (int source = 0; source < 3; source++) {
            for (int k = 0; k < SHIFTS.length; k++) {
                double[] amounts = new double[modes.count()];
                for (int mode = 0; mode < amounts.length; mode++) {
                    amounts[mode] = modes.drive().get(mode, source) / (SHIFTS[k] + modes.decay()[mode]);
                }
                double[][] weights = new double[3][SHIFTS.length + 1];
                modes.addWeights(amounts, weights);
                double[] found = field.fields().sumIn(weights, cells);
                double[] solved = field.solution(source, k);
                double largest = Arrays.stream(solved).max().orElseThrow();
                for (int cell : cells) {
                    assertEquals(solved[cell], found[cell], 1e-5 * largest, "cell " + cell + " at " + SHIFTS[k]);
                }
            }
        }
    }

    /** A poorer model errs more, and never by too much. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void poorerModelErrsMore(boolean bed) {
        SolvedField field = SolvedField.of(SolvedField.field(bed), SHIFTS);
        JointModel model = field.model(1e-13);
        JointModes better = model.modes(1e-13);
        JointModes poorer = model.modes(1e-3);
        assertTrue(poorer.count() < better.count());
        TransferValues direct = SolvedField.of(SolvedField.field(bed), BETWEEN).transfer();
        for (int k = 0; k < BETWEEN.length; k++) {
            for (int i = 0; i < 3; i++) {
                double least = transfer(poorer, i, i, BETWEEN[k]);
                double more = transfer(better, i, i, BETWEEN[k]);
                assertTrue(least <= more * (1 + 1e-12) && more <= direct.values(i, i)[k] * (1 + 1e-9));
            }
        }
    }
}

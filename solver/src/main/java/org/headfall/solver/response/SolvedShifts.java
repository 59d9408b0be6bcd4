package org.headfall.solver.response;

import java.util.Arrays;
import org.headfall.solver.flow.TransferSolves;
import org.headfall.solver.flow.TransferValues;

/**
 * Solves in Laplace space at as many shifts as reduced models need: the slowest first, which is the steady state where there is
 * one, then from the fastest on down a ladder until another solution changes what the models say of the shifts between there
 * and the slowest no more. Where heads are tied down, that is soon after the slowest change of the aquifer, however long the
 * time wanted.
 *
 * <p>A model is a Galerkin projection, so its transfer function can only grow with another solution in its space, up to the
 * true one; by how much is the square of the error of the field in the energy norm that the solution takes away.
 */
final class SolvedShifts {

    /** Part of its transfer function by which another solution may still change a model: there are no more after it. */
    private static final double CHANGE_THAT_COUNTS = 1e-8;

    private final TransferSolves solves;
    private final double[] ladder;
    private final double smallestDirection;
    private final double[][] foretold;

    private SolvedShifts(TransferSolves solves, double[] ladder, double smallestDirection) {
        this.solves = solves;
        this.ladder = ladder;
        this.smallestDirection = smallestDirection;
        foretold = new double[solves.places()][ladder.length];
    }

    /**
     * Solves.
     *
     * @param solves solves, not used before
     * @param ladder the shifts that may be needed (1/d), falling
     * @param smallestDirection share below which directions of the space of models are what the linear solver leaves
     * @return what was solved for: at the slowest shift first, then from the fastest on
     */
    static TransferValues of(TransferSolves solves, double[] ladder, double smallestDirection) {
        int slowest = ladder.length - 1;
        solves.solve(solves.hasSteady() ? 0 : ladder[slowest]);
        SolvedShifts shifts = new SolvedShifts(solves, ladder, smallestDirection);
        int rungs = solves.hasSteady() ? ladder.length : slowest;
        int rung = 0;
        boolean settled = false;
        while (rung < rungs && !settled) {
            solves.solve(ladder[rung++]);
            settled = shifts.settled(rung);
        }
        return solves.values();
    }

    /** Whether no model changes any more at the shifts from a rung on. */
    private boolean settled(int rung) {
        double[] shifts = solves.shifts();
        boolean[] changed = new boolean[foretold.length];
        solves.forPlaces(place -> {
            double[] falls = solves.ownFalls(place);
            StepResponse model =
                    new ReducedModel(shifts, solves.ownValues(place), falls, falls).stepResponse(smallestDirection);
            double[] now = new double[ladder.length];
            for (int k = rung; k < ladder.length; k++) {
                now[k] = model.transfer(ladder[k]);
                changed[place] |= Math.abs(now[k] - foretold[place][k]) > CHANGE_THAT_COUNTS * now[k];
            }
            foretold[place] = now;
        });
        return Arrays.equals(changed, new boolean[changed.length]);
    }
}

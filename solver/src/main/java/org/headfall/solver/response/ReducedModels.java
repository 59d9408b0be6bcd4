package org.headfall.solver.response;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.headfall.solver.flow.TransferValues;

/**
 * Step responses between places from reduced models. The response of one place to another comes from two models, of both
 * discharging together and of one giving what the other takes:
 *
 * <pre>{@code g_i^T f g_j = ((g_i + g_j)^T f (g_i + g_j) - (g_i - g_j)^T f (g_i - g_j)) / 4}</pre>
 *
 * <p>A model is asked only for its own source, where its errors are of second order, and both ways are the same. With
 * models of single sources, errors elsewhere were found to be of first order, 40 times as large. A source spread over
 * many cells does little where it stands; it is first made as strong as the place it is asked for, since the error of
 * either model is a share of the stronger.
 */
final class ReducedModels {

    private final TransferValues transfer;
    private final double smallestDirection;

    /**
     * Models.
     *
     * @param transfer what was solved for
     * @param smallestDirection share below which directions of their spaces are what the linear solver leaves
     */
    ReducedModels(TransferValues transfer, double smallestDirection) {
        this.transfer = transfer;
        this.smallestDirection = smallestDirection;
    }

    /**
     * Step response as far as the grid carries it.
     *
     * @param receptor the receptor: causes first, then points, then other sources
     * @param cause the cause, or another source
     */
    StepResponse response(int receptor, int cause) {
        if (receptor == cause) {
            double[] falls = transfer.falls(cause, cause);
            return new ReducedModel(transfer.shifts(), transfer.values(cause, cause), falls, falls)
                    .stepResponse(smallestDirection);
        }
        double strength = cause < transfer.receptors() ? 1 : strength(receptor, cause);
        StepResponse together = ofBoth(receptor, cause, strength).stepResponse(smallestDirection);
        StepResponse opposed = ofBoth(receptor, cause, -strength).stepResponse(smallestDirection);
        return together.plus(opposed.times(-1)).times(0.25 / strength);
    }

    /** Strength of a source that does as much where it stands as a unit source at another place does there in the end. */
    private double strength(int place, int source) {
        return Math.sqrt(transfer.values(place, place)[0] / transfer.values(source, source)[0]);
    }

    /** Model of a unit source at one place and one of some strength at another. */
    private ReducedModel ofBoth(int i, int j, double strength) {
        double square = strength * strength;
        double[] values = atShifts(a ->
                transfer.values(i, i)[a] + square * transfer.values(j, j)[a] + 2 * strength * transfer.values(i, j)[a]);
        double[] scale = atShifts(a -> transfer.falls(i, i)[a] + square * transfer.falls(j, j)[a]);
        double[] falls = atShifts(a -> scale[a] + 2 * strength * transfer.falls(i, j)[a]);
        return new ReducedModel(transfer.shifts(), values, falls, scale);
    }

    private double[] atShifts(IntToDoubleFunction function) {
        double[] result = new double[transfer.shifts().length];
        Arrays.setAll(result, function);
        return result;
    }
}

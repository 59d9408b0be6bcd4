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
 * models of single sources, errors elsewhere were found to be of first order, 40 times as large.
 */
final class ReducedModels {

    private final TransferValues transfer;

    ReducedModels(TransferValues transfer) {
        this.transfer = transfer;
    }

    /**
     * Step response as far as the grid carries it.
     *
     * @param receptor the receptor: causes first, then points
     * @param cause the cause
     */
    StepResponse response(int receptor, int cause) {
        if (receptor == cause) {
            double[] falls = transfer.falls(cause, cause);
            return new ReducedModel(transfer.shifts(), transfer.values(cause, cause), falls, falls).stepResponse();
        }
        StepResponse together = ofBoth(receptor, cause, 1).stepResponse();
        StepResponse opposed = ofBoth(receptor, cause, -1).stepResponse();
        return together.plus(opposed.times(-1)).times(0.25);
    }

    /** Model of a unit source at one place and one with a sign at another. */
    private ReducedModel ofBoth(int i, int j, int sign) {
        double[] values = atShifts(
                a -> transfer.values(i, i)[a] + transfer.values(j, j)[a] + 2 * sign * transfer.values(i, j)[a]);
        double[] scale = atShifts(a -> transfer.falls(i, i)[a] + transfer.falls(j, j)[a]);
        double[] falls = atShifts(a -> scale[a] + 2 * sign * transfer.falls(i, j)[a]);
        return new ReducedModel(transfer.shifts(), values, falls, scale);
    }

    private double[] atShifts(IntToDoubleFunction function) {
        double[] result = new double[transfer.shifts().length];
        Arrays.setAll(result, function);
        return result;
    }
}

package org.headfall.solver.response;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.jspecify.annotations.Nullable;

/**
 * Step responses to every bore and spring, the causes, at every receptor: bores first, then springs, then points
 * without discharge. Immutable.
 */
public final class UnitResponses {

    /** Raised when responses of the same problem come out otherwise, so that stored ones are not taken for new. */
    public static final int METHOD = 3;

    private final ResponseTable table;
    private final Optional<double[]> steady;

    /** Made when first asked for, since not everyone does; the same whoever makes it. */
    private @Nullable SharedModes modes;

    /**
     * Responses that are known already, as those of a file.
     *
     * @param table responses over time
     * @param steady what they come to in the end (d/m²), in the order of the curves of the table; absent if they grow
     *     for ever
     */
    public UnitResponses(ResponseTable table, Optional<double[]> steady) {
        this.table = table;
        this.steady = steady.map(double[]::clone);
    }

    /**
     * Computes the responses of a problem.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param horizon longest time wanted (d)
     * @param threads threads of the linear solver
     * @return the responses
     */
    public static UnitResponses of(FlowProblem problem, List<ObservedHead> points, double horizon, int threads) {
        return new ComputedResponses(problem, points, List.of(), horizon, threads).unitResponses();
    }

    /** Number of bores and springs. */
    public int causes() {
        return table.causes();
    }

    /** Number of bores, springs and points. */
    public int receptors() {
        return table.receptors();
    }

    /** Responses of every cause at every receptor. */
    public ResponseTable table() {
        return table;
    }

    /**
     * Finds now what the first superposition would find: to be called by a thread that has nothing else to do. What cannot be
     * found is told by that superposition.
     *
     * @throws ModesNotFoundException if modes of the responses are not found
     */
    public void prepare() {
        modes();
    }

    /** Responses as sums of shared modes. */
    synchronized SharedModes modes() {
        SharedModes made = modes == null ? SharedModes.of(table) : modes;
        modes = made;
        return made;
    }

    /** What they come to in the end (d/m²), in the order of the curves of the table; a copy. */
    public Optional<double[]> steady() {
        return steady.map(double[]::clone);
    }

    /**
     * Drawdown at a receptor by a unit discharge of a cause that has lasted for a time.
     *
     * @param receptor the receptor
     * @param cause the cause
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge (d/m²)
     * @throws IllegalArgumentException if the time lies beyond the horizon
     */
    public double at(int receptor, int cause, double time) {
        return table.at(receptor, cause, time);
    }

    /**
     * Drawdown at a receptor by a unit discharge of a cause that has lasted for ever.
     *
     * @param receptor the receptor
     * @param cause the cause
     * @return drawdown per discharge (d/m²)
     * @throws IllegalStateException if there is no steady state
     */
    public double steadyAt(int receptor, int cause) {
        double[] values = steady.orElseThrow(
                () -> new IllegalStateException("nothing ties heads down: there is no" + " steady state"));
        return values[cause * receptors() + receptor];
    }
}

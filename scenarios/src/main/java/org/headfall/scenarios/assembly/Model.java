package org.headfall.scenarios.assembly;

import java.util.List;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.simulation.Settings;

/**
 * A scenario in the terms of the solver. Arrays are not copied and must not change.
 *
 * @param problem aquifer, borders and bores; bores and springs in the order of the scenario
 * @param start heads at the start
 * @param days length of the period (d)
 * @param settings accuracy of the run
 * @param ground level of the ground of each cell (m above datum)
 * @param outputDays days on which something is written
 * @param spreads how values at points became values on cells
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record Model(
        FlowProblem problem,
        Start start,
        double days,
        Settings settings,
        double[] ground,
        OutputDays outputDays,
        List<SpreadField> spreads) {
    /** Copies the list. */
    public Model {
        spreads = List.copyOf(spreads);
    }

    /** Heads at the start of the run. */
    public sealed interface Start {}

    /**
     * Given heads.
     *
     * @param heads head of each cell (m above datum)
     */
    @SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
    public record GivenHeads(double[] heads) implements Start {}

    /**
     * The steady heads of another problem under the operations in force on day 0.
     *
     * @param problem the same problem with the existing bores only, or without any
     */
    public record SteadyHeads(FlowProblem problem) implements Start {}
}

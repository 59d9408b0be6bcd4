package org.headfall.solver.response;

import java.util.List;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;

/**
 * All that is needed to find heads at bores, springs and points without the grid, whatever bores and springs take: the
 * responses to a unit discharge of each, and heads without any of them.
 *
 * @param responses the responses
 * @param undisturbed heads without bores and springs, at the same receptors
 */
public record StationResponses(UnitResponses responses, UndisturbedHeads undisturbed) {

    /**
     * Responses of a problem that starts from heads at rest.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param horizon longest time wanted (d)
     * @param settings accuracy and threads
     * @return the responses
     * @throws IllegalStateException if nothing ties heads down
     */
    public static StationResponses fromSteady(
            FlowProblem problem, List<ObservedHead> points, double horizon, Settings settings) {
        return of(
                problem,
                points,
                headsAtRest(problem, List.of(), settings),
                ChangingSources.afterSteady(problem),
                horizon,
                settings.threads());
    }

    /** Steady heads of a problem with some bores in place of its own, and without springs (m above datum). */
    static double[] headsAtRest(FlowProblem problem, List<Bore> bores, Settings settings) {
        FlowProblem resting = new FlowProblem(
                problem.aquifer(), problem.sealingBed(), problem.boundaries(), problem.recharges(), List.of(), bores);
        try (Simulation simulation = new Simulation(resting, settings)) {
            return simulation.steadyHead(0);
        }
    }

    /**
     * Responses of a problem that starts from given heads, to which the sealing bed has adjusted.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param heads head of each cell at the start (m above datum)
     * @param horizon longest time wanted (d)
     * @param threads threads of the linear solver
     * @return the responses
     */
    public static StationResponses fromGiven(
            FlowProblem problem, List<ObservedHead> points, double[] heads, double horizon, int threads) {
        return of(problem, points, heads, ChangingSources.afterGiven(problem, heads), horizon, threads);
    }

    private static StationResponses of(
            FlowProblem problem,
            List<ObservedHead> points,
            double[] heads,
            List<ChangingSource> sources,
            double horizon,
            int threads) {
        return of(new ComputedResponses(problem, points, sources, horizon, threads), heads, sources, horizon);
    }

    static StationResponses of(
            ComputedResponses computed, double[] heads, List<ChangingSource> sources, double horizon) {
        ResponseTable rises = computed.ofSources(sources.size());
        return new StationResponses(
                computed.unitResponses(), new UndisturbedHeads(computed.headsAt(heads), sources, rises, horizon));
    }
}

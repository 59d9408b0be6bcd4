package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.NoSteadyStateException;
import org.headfall.solver.flow.PointRules;

/**
 * What a superposed run starts from. At the start each wall feels each discharge by one number: what it has come to in the
 * end, where heads are at rest, and what the grid does not carry, where heads of the cells are given. So discharges that
 * follow head meet their rules in a small linear system at one moment.
 *
 * @param state the state
 * @param reference discharge of each bore, then each spring, of which only changes are superposed (m³/d); none if heads are given
 * @param drawdown drawdown at each receptor by that discharge (m)
 * @param metRules whether some discharge follows head, so that its rule may be missed by its tolerance
 */
@SuppressWarnings("ArrayRecordComponent") // read by one run, never compared
record SuperposedStart(SuperposedState state, double[] reference, double[] drawdown, boolean metRules) {

    /**
     * Start at rest.
     *
     * @param atRest the problem with the operations that had brought about the start, in force on day 0
     * @param station responses of the problem
     * @param tolerance largest error of head at a wall (m)
     * @return the start
     * @throws NoSteadyStateException if nothing ties heads down
     * @throws org.headfall.solver.flow.UnmetRuleException if the rules cannot be met
     */
    static SuperposedStart atRest(FlowProblem atRest, StationResponses station, double tolerance) {
        UnitResponses responses = station.responses();
        PointRules rules = new PointRules(atRest);
        double[] steady = responses.steady().orElseThrow(() -> new NoSteadyStateException(rules, 0));
        double[] discharge = discharges(rules, 0, steady, station, tolerance);
        double[] drawdown = new double[responses.receptors()];
        for (int receptor = 0; receptor < drawdown.length; receptor++) {
            for (int cause = 0; cause < discharge.length; cause++) {
                drawdown[receptor] += responses.steadyAt(receptor, cause) * discharge[cause];
            }
        }
        double[] head = station.undisturbed().atStart();
        Arrays.setAll(head, receptor -> head[receptor] - drawdown[receptor]);
        SuperposedState state = SuperposedState.of(rules, atRest.bores().size(), 0, 0, head, discharge);
        return new SuperposedStart(state, discharge.clone(), drawdown, follows(rules, 0));
    }

    /**
     * Start from given heads of the cells, in the moment before day 0; at the walls of bores only what the grid does not
     * carry comes on top.
     *
     * @param problem the problem
     * @param station responses of the problem from these heads
     * @param tolerance largest error of head at a wall (m)
     * @return the start
     * @throws org.headfall.solver.flow.UnmetRuleException if the rules cannot be met
     */
    static SuperposedStart given(FlowProblem problem, StationResponses station, double tolerance) {
        double before = Math.nextDown(0.0);
        PointRules rules = new PointRules(problem);
        double[] atOnce = station.responses().table().atOnce();
        double[] discharge = discharges(rules, before, atOnce, station, tolerance);
        double[] head = station.undisturbed().atStart();
        for (int receptor = 0; receptor < head.length; receptor++) {
            for (int cause = 0; cause < discharge.length; cause++) {
                head[receptor] -= atOnce[cause * head.length + receptor] * discharge[cause];
            }
        }
        SuperposedState state = SuperposedState.of(rules, problem.bores().size(), before, 0, head, discharge);
        return new SuperposedStart(
                state, new double[discharge.length], new double[head.length], follows(rules, before));
    }

    private static boolean follows(PointRules rules, double moment) {
        for (boolean follows : rules.dependOnHead(moment)) {
            if (follows) {
                return true;
            }
        }
        return false;
    }

    /** Discharges by rules at one moment where each wall feels each discharge by a fixed response. */
    private static double[] discharges(
            PointRules rules, double moment, double[] curves, StationResponses station, double tolerance) {
        int receptors = station.responses().receptors();
        boolean[] depend = rules.dependOnHead(moment);
        double[] rates = rules.asked(moment);
        int[] following =
                IntStream.range(0, rates.length).filter(i -> depend[i]).toArray();
        for (int point : following) {
            rates[point] = 0;
        }
        double[] start = station.undisturbed().atStart();
        double[][] response = new double[following.length][following.length];
        double[] offered = new double[following.length];
        for (int i = 0; i < following.length; i++) {
            offered[i] = start[following[i]];
            for (int cause = 0; cause < rates.length; cause++) {
                offered[i] -= curves[cause * receptors + following[i]] * rates[cause];
            }
            for (int j = 0; j < following.length; j++) {
                response[i][j] = curves[following[j] * receptors + following[i]];
            }
        }
        double[] found = new double[following.length];
        rules.meet(moment, following, response, offered, found, tolerance);
        for (int i = 0; i < following.length; i++) {
            rates[following[i]] = found[i];
        }
        return rates;
    }
}

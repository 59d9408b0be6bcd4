package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferSolves;
import org.headfall.solver.flow.TransferValues;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Responses as they are computed: in Laplace space the problem is solved for some shifts, and reduced models that meet
 * these solutions give the responses at all times.
 */
final class ComputedResponses {

    private static final double FIRST_TIME = 1e-3;

    private final double[] times;
    private final TransferValues transfer;
    private final ReducedModels models;

    /**
     * Computes.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param sources what else moves heads
     * @param horizon longest time wanted (d)
     * @param threads threads of the linear solver
     */
    ComputedResponses(
            FlowProblem problem, List<ObservedHead> points, List<ChangingSource> sources, double horizon, int threads) {
        this(problem, points, sources, horizon, Optional.empty(), Fineness.USUAL, threads);
    }

    /**
     * Computes, and keeps the solutions.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param sources what else moves heads
     * @param horizon longest time wanted (d)
     * @param fields receives the solutions; none if nobody wants them
     * @param fineness how finely it is solved
     * @param threads threads of the linear solver
     */
    ComputedResponses(
            FlowProblem problem,
            List<ObservedHead> points,
            List<ChangingSource> sources,
            double horizon,
            Optional<SourceFields> fields,
            Fineness fineness,
            int threads) {
        times = ShiftLadder.times(FIRST_TIME, horizon);
        try (WorkerTeam team = new WorkerTeam(threads)) {
            transfer = SolvedShifts.of(
                    new TransferSolves(problem, points, sources, fields, fineness.tolerance(), team),
                    ShiftLadder.until(1 / FIRST_TIME, horizon, fineness.shiftsPerDecade()),
                    fineness.smallestDirection());
        }
        models = new ReducedModels(transfer, fineness.smallestDirection());
    }

    /** What was solved for. */
    TransferValues transfer() {
        return transfer;
    }

    /** Responses to bores and springs. */
    UnitResponses unitResponses() {
        int causes = transfer.causes();
        Curves curves = new Curves(causes);
        for (int receptor = 0; receptor < transfer.receptors(); receptor++) {
            for (int cause = 0; cause < Math.min(receptor + 1, causes); cause++) {
                StepResponse response = models.response(receptor, cause);
                curves.set(receptor, cause, cause, response);
                if (receptor < causes) {
                    // What this does at a cause, the cause does here.
                    curves.set(cause, receptor, receptor, response);
                }
            }
        }
        return curves.responses();
    }

    /** Heads at all receptors while nothing is taken (m above datum), from heads of all cells. */
    double[] headsAt(double[] head) {
        double[] heads = new double[transfer.receptors()];
        Arrays.setAll(heads, receptor -> transfer.headAt(receptor, head));
        return heads;
    }

    /** Rise of head by a unit inflow of each of the sources, in their order. */
    ResponseTable ofSources(int sources) {
        Curves curves = new Curves(sources);
        for (int source = 0; source < sources; source++) {
            int place = transfer.receptors() + source;
            for (int receptor = 0; receptor < transfer.receptors(); receptor++) {
                curves.set(receptor, source, place, models.response(receptor, place));
            }
        }
        return curves.table();
    }

    /** Curves of some causes at all receptors, as they are filled in. */
    private final class Curves {

        private final double[] atOnce;
        private final double[] steady;
        private final double[][] values;
        private final double[][] rates;

        Curves(int causes) {
            int curves = causes * transfer.receptors();
            atOnce = new double[curves];
            steady = new double[curves];
            values = new double[times.length][curves];
            rates = new double[times.length][curves];
        }

        /** Sets the curve of a cause, which stands at some place among all that was solved for. */
        void set(int receptor, int cause, int place, StepResponse response) {
            int curve = cause * transfer.receptors() + receptor;
            atOnce[curve] = transfer.atOnce(receptor, place);
            steady[curve] = atOnce[curve] + transfer.steady(receptor, place);
            for (int i = 0; i < times.length; i++) {
                values[i][curve] = atOnce[curve] + response.value(times[i]);
                rates[i][curve] = response.rate(times[i]);
            }
        }

        ResponseTable table() {
            return new ResponseTable(transfer.receptors(), times, atOnce, values, rates);
        }

        UnitResponses responses() {
            return new UnitResponses(table(), transfer.hasSteady() ? Optional.of(steady) : Optional.empty());
        }
    }
}

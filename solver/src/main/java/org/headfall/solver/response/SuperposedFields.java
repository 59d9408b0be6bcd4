package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.FieldSeries;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.flow.ReachedDay;
import org.headfall.solver.flow.StraightPiece;
import org.headfall.solver.linear.WorkerTeam;

/**
 * Heads of all cells and water balances of a run whose discharges superposition has found. Discharges run straight in each
 * step, and so does what boundaries, recharge and a start out of balance let in more than at the start: the models of all
 * sources are carried through these steps exactly, and say on each day what sum of the solutions at the shifts the field is.
 */
public final class SuperposedFields {

    private final FieldResponses responses;
    private final SuperposedRun run;
    private final double[] startHead;
    private final double[] reference;
    private final List<ReachedDay> days = new ArrayList<>();
    private final List<double[][]> weightsOfStates = new ArrayList<>();
    private double stationError;
    private double modelError;

    /**
     * Carries the models through a run.
     *
     * @param responses responses of its problem
     * @param run the run, at its end
     * @param startHead head of each cell at the start (m above datum)
     * @param reference discharge of each bore, then each spring, that heads at the start are at rest with (m³/d); none if the
     *     start was given
     * @param fieldDays days on which heads of all cells are wanted, increasing, after the start; among the recorded days
     */
    public SuperposedFields(
            FieldResponses responses, SuperposedRun run, double[] startHead, double[] reference, double[] fieldDays) {
        this.responses = responses;
        this.run = run;
        this.startHead = startHead;
        this.reference = reference.clone();
        carry(fieldDays);
    }

    private void carry(double[] fieldDays) {
        RateHistory history = run.history();
        List<SuperposedState> states = run.states();
        CarriedModes modes = responses.models();
        CarriedModes poorer = responses.poorerModels();
        FieldCheck check = responses.check();
        int causes = reference.length;
        double[] taken = new double[causes];
        double[] givenBack = new double[causes];
        int state = 1;
        for (int step = 0; step < history.steps(); step++) {
            double from = history.startOf(step);
            double to = history.startOf(step + 1);
            double[] begin = new double[causes + responses.fields().others().size()];
            double[] end = new double[begin.length];
            for (int i = 0; i < causes; i++) {
                double last = history.rateAtEnd(step, i);
                double first = 2 * history.rate(step, i) - last;
                taken[i] += StraightPiece.integral(first, last, to - from, 1);
                givenBack[i] -= StraightPiece.integral(first, last, to - from, -1);
                begin[i] = first - reference[i];
                end[i] = last - reference[i];
            }
            addOthers(from, to, begin, end);
            modes.advance(to - from, begin, end);
            poorer.advance(to - from, begin, end);
            if (state < states.size() && states.get(state).day() == to) {
                double[][] weights = modes.weights();
                compare(states.get(state++), weights);
                modelError = Math.max(modelError, check.difference(weights, poorer.weights()));
                weightsOfStates.add(weights);
            }
            if (Arrays.binarySearch(fieldDays, to) >= 0) {
                days.add(new ReachedDay(to, modes.weights(), modes.takeIntegral(), taken, givenBack));
                taken = new double[causes];
                givenBack = new double[causes];
            }
        }
    }

    /** What else moves heads lets water in: it takes the less. */
    private void addOthers(double from, double to, double[] begin, double[] end) {
        List<ChangingSource> others = responses.fields().others();
        for (int i = 0; i < others.size(); i++) {
            begin[reference.length + i] = -others.get(i).change(from);
            end[reference.length + i] = -others.get(i).change(Math.nextDown(to));
        }
    }

    private void compare(SuperposedState state, double[][] weights) {
        for (int receptor = 0; receptor < state.head().length; receptor++) {
            double head =
                    responses.headAt(receptor, startHead) - responses.drawdown(receptor, weights, state.discharge());
            stationError = Math.max(stationError, Math.abs(head - state.head()[receptor]));
        }
    }

    /**
     * Error of heads of all cells as estimated (m): the largest difference, on all recorded days, between heads by the models and
     * by poorer models at cells spread over the map, which err more, and that between heads at bores, springs and points as
     * the fields have them and as the stations' own responses of second order give them. An estimate, no bound: against
     * simulations held tightly the worst cells erred by less in ten random fields of 10,000 cells, see DEVELOPERS.md.
     */
    public double error() {
        return modelError + stationError;
    }

    /**
     * Heads of some cells on a recorded day.
     *
     * @param state which of the states of the run, from 1; 0 is the start
     * @param cells the cells
     * @return head of each of these cells (m above datum)
     */
    public double[] headsIn(int state, int[] cells) {
        double[] head = responses.fields().sumIn(weightsOfStates.get(state - 1), cells);
        Arrays.setAll(head, i -> startHead[cells[i]] - head[i]);
        return head;
    }

    /** Linear systems of the size of the grid that were solved for the responses. */
    public long solves() {
        return responses.fields().solves();
    }

    /** Iterations of the linear solver for the responses. */
    public long iterations() {
        return responses.fields().iterations();
    }

    /**
     * Makes the fields.
     *
     * @param threads threads
     * @param observer is told of each of the days
     */
    public void run(int threads, FieldSeries.Observer observer) {
        try (WorkerTeam team = new WorkerTeam(threads)) {
            new FieldSeries(responses.fields(), startHead).run(days, team, observer);
        }
    }
}

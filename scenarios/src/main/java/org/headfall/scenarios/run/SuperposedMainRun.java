package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationValues;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.response.FieldResponses;
import org.headfall.solver.response.SuperposedFields;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;
import org.headfall.solver.simulation.RunStatistics;

/**
 * A run by superposition: discharges and heads at stations from their responses, then heads of all cells, on the days for
 * which grids are wanted, from solutions of all sources.
 */
final class SuperposedMainRun implements MainRun {

    /** Part of the head tolerance that steps of superposition are chosen for; the rest is left to its modes and to fields. */
    static final double SHARE_OF_STEPS = 0.5;

    private final RunPlan plan;
    private final RecordPlan records;
    private final RunProgress progress;
    private final SuperposedRun run;
    private final SuperposedFields fields;
    private final double[] startHead;
    private final double error;
    private final String why;
    private final long started = System.nanoTime();

    /**
     * Finds discharges, heads at stations, and how large the error is.
     *
     * @param plan the run
     * @param start its start
     * @param records days to record
     * @param responses responses of its problem
     * @param progress is told how far the run has come
     * @param why why it is found so
     * @throws org.headfall.solver.flow.UnmetRuleException if the rules of bores or springs cannot be met
     * @throws org.headfall.solver.response.SuperpositionException if discharges bend more often than superposition can follow,
     *     or the modes of responses are not found
     */
    SuperposedMainRun(
            RunPlan plan,
            StartState start,
            RecordPlan records,
            FieldResponses responses,
            RunProgress progress,
            String why) {
        this.plan = plan;
        this.records = records;
        this.progress = progress;
        this.why = why;
        startHead = start.heads();
        double accuracy = SHARE_OF_STEPS * plan.settings().accuracy();
        double[] reference = start.discharges();
        if (plan.start().given().isPresent()) {
            Arrays.fill(reference, 0);
        }
        run = plan.start().superposed(plan.problem(), plan.problem(), responses.stations(), accuracy);
        run.run(records.days(), plan.description().endDay());
        fields = new SuperposedFields(responses, run, start.heads(), reference, fieldDays());
        error = fields.error() + run.estimatedError();
    }

    private double[] fieldDays() {
        return DoubleStream.of(records.gridDays()).filter(day -> day > 0).toArray();
    }

    /** Error of head as estimated, at stations and at any cell (m). */
    double estimatedError() {
        return error;
    }

    @Override
    public Found run(Recorder recorder) {
        RunDescription description = plan.description();
        Feed feed = new Feed(recorder, description.stations().size());
        fields.run(plan.settings().threads(), (day, head, balance) -> {
            feed.take(day, head, balance);
            progress.reached(STAGE, day / description.endDay());
        });
        RunStatistics statistics = new RunStatistics(
                description.grid().cellCount(),
                run.history().steps(),
                0,
                fields.solves(),
                fields.iterations(),
                run.estimatedError(),
                feed.largestDiscrepancy,
                (System.nanoTime() - started) * 1e-9);
        double stated = Math.max(plan.settings().accuracy(), error);
        return new Found(
                run.history(),
                statistics,
                HeadError.ofSuperposition(description, stated),
                new SolvedBy(true, why, error));
    }

    /** Hands records on day by day: stations up to a grid, then the grid. */
    private final class Feed {

        private final Recorder recorder;
        private final int stations;
        private final List<SuperposedState> states = run.states();
        private double[] headBefore;
        private int next = 1;
        private double largestDiscrepancy;

        Feed(Recorder recorder, int stations) {
            this.recorder = recorder;
            this.stations = stations;
            headBefore = startHead.clone();
        }

        void take(double day, double[] head, WaterBalance balance) {
            int first = next;
            while (next < states.size() && states.get(next).day() <= day) {
                recorder.stations(values(states.get(next++)));
            }
            lookBetween(first, next - 1, head);
            recorder.grid(day, head, balance);
            largestDiscrepancy = Math.max(largestDiscrepancy, balance.largestStepDiscrepancy());
            headBefore = head.clone();
        }

        /** Stations move more than any cell, for what moves heads stands there. */
        private void lookBetween(int first, int last, double[] head) {
            int[] cells = recorder.cellsNearTop(headBefore, head, lowestBetween(first, last));
            for (int state = first; state < last && cells.length > 0; state++) {
                recorder.confinement(states.get(state).day(), cells, fields.headsIn(state, cells));
            }
        }

        /** How far the head at any station has been below those on the days of both grids (m). */
        private double lowestBetween(int first, int last) {
            double largest = 0;
            for (int state = first; state < last; state++) {
                for (int i = 0; i < stations; i++) {
                    double ends = Math.min(
                            states.get(first - 1).head()[i], states.get(last).head()[i]);
                    largest = Math.max(largest, ends - states.get(state).head()[i]);
                }
            }
            return largest;
        }

        private StationValues values(SuperposedState state) {
            int bores = state.levelInBore().length;
            return new StationValues(
                    state.day(),
                    state.head(),
                    padded(state.levelInBore(), bores),
                    padded(state.discharge(), state.discharge().length),
                    padded(state.asked(), bores));
        }

        /** The first so many values, and none for the other stations. */
        private double[] padded(double[] values, int count) {
            double[] padded = Arrays.copyOf(values, stations);
            Arrays.fill(padded, count, stations, Double.NaN);
            return padded;
        }
    }
}

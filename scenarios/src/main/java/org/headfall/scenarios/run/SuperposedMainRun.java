package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationValues;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.solver.flow.FlowSystem;
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

    /** Part of the head tolerance that discharges and heads at stations may err by; the rest is left to fields. */
    private static final double SHARE_OF_DISCHARGES = 0.5;

    private final RunPlan plan;
    private final RecordPlan records;
    private final RunProgress progress;
    private final SuperposedRun run;
    private final SuperposedFields fields;
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
     * @throws IllegalStateException if the rules of bores or springs cannot be met
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
        double accuracy = SHARE_OF_DISCHARGES * plan.settings().accuracy();
        double[] reference = start.discharges();
        if (plan.start() instanceof StartHeads.Steady steady) {
            run = SuperposedRun.fromSteady(
                    plan.problem(), steady.problem(plan.problem()), responses.stations(), accuracy);
        } else {
            run = SuperposedRun.fromGiven(plan.problem(), responses.stations(), accuracy);
            Arrays.fill(reference, 0);
        }
        run.run(records.days(), plan.description().endDay());
        fields = new SuperposedFields(responses, run, start.heads(), reference, fieldDays());
        error = fields.error() + run.estimatedError() + FlowSystem.ruleTolerance(accuracy);
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
        List<SuperposedState> states = run.states();
        int[] next = {1};
        double[] worstBalance = new double[1];
        fields.run(RunResponses.memory(), plan.settings().threads(), (day, head, balance) -> {
            while (next[0] < states.size() && states.get(next[0]).day() <= day) {
                recorder.stations(
                        values(states.get(next[0]++), description.stations().size()));
            }
            recorder.grid(day, head, balance);
            worstBalance[0] = Math.max(worstBalance[0], balance.largestStepDiscrepancy());
            progress.reached(STAGE, day / description.endDay());
        });
        RunStatistics statistics = new RunStatistics(
                description.grid().cellCount(),
                run.history().steps(),
                0,
                fields.solves(),
                fields.iterations(),
                run.estimatedError(),
                worstBalance[0],
                (System.nanoTime() - started) * 1e-9);
        double stated = Math.max(plan.settings().accuracy(), error);
        return new Found(
                run.history(),
                statistics,
                HeadError.ofSuperposition(description, stated),
                new SolvedBy(true, why, error));
    }

    private static StationValues values(SuperposedState state, int stations) {
        return new StationValues(
                state.day(),
                state.head(),
                padded(state.levelInBore(), state.levelInBore().length, stations),
                padded(state.discharge(), state.discharge().length, stations),
                padded(state.asked(), state.levelInBore().length, stations));
    }

    /** The first so many values, and none for the other stations. */
    private static double[] padded(double[] values, int count, int stations) {
        double[] padded = Arrays.copyOf(values, stations);
        Arrays.fill(padded, count, stations, Double.NaN);
        return padded;
    }
}

package org.headfall.validation.benchmark;

import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.response.FieldResponses;
import org.headfall.solver.response.SuperposedFields;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.simulation.Settings;

/**
 * What a run by superposition took.
 *
 * @param responseSeconds time for unit responses (s)
 * @param fieldSeconds time for heads of all cells once a year, and water balances (s)
 * @param seconds time in all (s)
 * @param steps steps of discharges
 * @param solves linear systems solved for unit responses
 * @param iterations iterations of the linear solver for unit responses
 * @param error error of heads as estimated (m)
 * @param balance largest discrepancy of a year's water balance over its throughput (-)
 */
record SuperposedField(
        double responseSeconds,
        double fieldSeconds,
        double seconds,
        int steps,
        long solves,
        long iterations,
        double error,
        double balance) {

    private static final double NANO = 1e-9;
    private static final int MONTHS = 12;

    /**
     * Makes a run from heads that are at rest without bores.
     *
     * @param problem the problem
     * @param startHead head of each cell at the start (m above datum)
     * @param days end of each month (d)
     * @param memory where solutions are kept
     * @param settings accuracy and threads
     */
    static SuperposedField of(
            FlowProblem problem, double[] startHead, double[] days, SolutionMemory memory, Settings settings) {
        long begun = System.nanoTime();
        double end = days[days.length - 1];
        FieldResponses responses = FieldResponses.fromSteady(problem, List.of(), startHead, end, memory, settings);
        long solved = System.nanoTime();
        List<Bore> idle =
                problem.bores().stream().map(bore -> bore.withPhases(List.of())).toList();
        SuperposedRun run =
                SuperposedRun.fromSteady(problem, problem.withBores(idle), responses.stations(), settings.accuracy());
        run.run(days, end);
        double[] years = IntStream.range(0, days.length)
                .filter(month -> (month + 1) % MONTHS == 0)
                .mapToDouble(month -> days[month])
                .toArray();
        SuperposedFields fields = new SuperposedFields(
                responses, run, startHead, new double[problem.bores().size()], years);
        double[] worst = new double[1];
        fields.run(
                settings.threads(),
                (day, head, balance) -> worst[0] = Math.max(worst[0], balance.relativeDiscrepancy()));
        long ended = System.nanoTime();
        return new SuperposedField(
                NANO * (solved - begun),
                NANO * (ended - solved),
                NANO * (ended - begun),
                run.history().steps(),
                fields.solves(),
                fields.iterations(),
                fields.error() + run.estimatedError(),
                worst[0]);
    }
}

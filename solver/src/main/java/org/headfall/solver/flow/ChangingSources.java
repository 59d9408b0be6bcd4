package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.ConstantSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;

/**
 * All that moves heads of a problem besides bores and springs. Flow is linear, so a boundary whose head changes acts like
 * inflow of its cells, and given heads that are not at rest change as heads at rest would if what is out of balance
 * entered from the start on.
 */
public final class ChangingSources {

    private ChangingSources() {}

    /**
     * Sources that change after a start at rest.
     *
     * @param problem the problem
     * @return the sources, none where boundaries and recharge stay as they are
     */
    public static List<ChangingSource> afterSteady(FlowProblem problem) {
        Aquifer aquifer = problem.aquifer();
        return Stream.concat(
                        problem.boundaries().stream()
                                .map(boundary ->
                                        BoundaryFaces.of(boundary, aquifer).change()),
                        problem.recharges().stream().map(recharge -> new RechargeCells(recharge, aquifer).change()))
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * Sources that change after given heads, to which the sealing bed has adjusted.
     *
     * @param problem the problem
     * @param heads head of each cell at the start (m above datum)
     * @return the sources; what is out of balance at the start comes last
     */
    public static List<ChangingSource> afterGiven(FlowProblem problem, double[] heads) {
        FlowEquation equation = new FlowEquation(problem);
        List<ChangingSource> sources = new ArrayList<>(afterSteady(problem));
        double[] right = new double[equation.size()];
        double[] inflow = new double[equation.size()];
        equation.sources(0, right);
        equation.netInflow(right, heads, inflow);
        boolean[] active = problem.aquifer().active();
        int[] cells = IntStream.range(0, inflow.length)
                .filter(cell -> active[cell] && inflow[cell] != 0)
                .toArray();
        double[] amounts =
                Arrays.stream(cells).mapToDouble(cell -> inflow[cell]).toArray();
        scaled("heads at the start", cells, amounts, new StepSchedule(new double[] {0}, new double[] {1}), 0)
                .ifPresent(sources::add);
        return sources;
    }

    /** Source of cells that receive so much by a unit of a schedule (m³/d), if the schedule changes. */
    static Optional<ChangingSource> following(String name, int[] cells, double[] perUnit, Schedule schedule) {
        return schedule instanceof ConstantSchedule
                ? Optional.empty()
                : scaled(name, cells, perUnit, schedule, schedule.at(0));
    }

    private static Optional<ChangingSource> scaled(
            String name, int[] cells, double[] perUnit, Schedule schedule, double reference) {
        double scale = Arrays.stream(perUnit).map(Math::abs).sum();
        if (scale == 0) {
            return Optional.empty();
        }
        double[] shares = Arrays.stream(perUnit).map(amount -> amount / scale).toArray();
        return Optional.of(new ChangingSource(name, new CellWeights(cells, shares), scale, schedule, reference));
    }
}

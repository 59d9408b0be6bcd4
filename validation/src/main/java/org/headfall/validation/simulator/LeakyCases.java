package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;
import static org.headfall.validation.check.ValidationCase.Pace.SLOW;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.analytic.BedTop;
import org.headfall.solver.analytic.HantushJacobSolution;
import org.headfall.solver.analytic.RadialSolution;
import org.headfall.solver.analytic.StoringBedSolution;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.ValidationCase;

/** Bores under a leaking sealing bed, without and with storage in it. */
final class LeakyCases {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RATE = 2000;
    private static final double CELL = 100;
    private static final int EQUAL_CELLS = 22;

    private LeakyCases() {}

    static List<ValidationCase> all() {
        return List.of(hantushJacob(), storingBed());
    }

    private static RectilinearGrid grid(double reach) {
        Axis axis = new Spacing(CELL, 1.1, reach).bothWays(EQUAL_CELLS);
        return new RectilinearGrid(axis, axis);
    }

    private static ValidationCase hantushJacob() {
        return new ValidationCase(
                "hantush-jacob",
                "Hantush and Jacob: leakage through a bed without storage; early, middle, late and de Glee's steady state",
                Part.SIMULATOR,
                List.of(
                        new Source(
                                "Hantush and Jacob",
                                1955,
                                "Transactions AGU 36, 95-100",
                                "equation with W(u, r/B)",
                                Standing.QUOTED),
                        new Source(
                                "de Glee",
                                1930,
                                "Over grondwaterstroomingen bij wateronttrekking door middel van putten",
                                "steady state with K0(r/B)",
                                Standing.MEMORY)),
                "Leakage in proportion to drawdown enters every cell rightly, from t = S c/10 until it supplies the bore"
                        + " alone.",
                "A level above the bed that falls.",
                FAST,
                findings -> {
                    leaky(Placement.CENTRE, findings);
                    leaky(Placement.anywhere().get(3), findings);
                });
    }

    private static void leaky(Placement place, Findings findings) {
        RectilinearGrid grid = grid(20_000);
        double resistance = 10_000;
        Bore bore = Field.pumped("A", place.x() * CELL, place.y() * CELL, Schedule.constant(RATE));
        FlowProblem problem = problem(grid, Field.bed(grid, 10, 10 / resistance, 0), bore);
        HantushJacobSolution solution = new HantushJacobSolution(T, S, resistance);
        var check = new DrawdownCheck(problem, around(bore, solution), "Hantush-Jacob", place.toString());
        List<State> states = Field.run(problem, Field.days(0.2, 40, 10));
        check.compare(states, findings);
        findings.plot(check.overTime(states, true));
        double[] steady = Field.steady(problem);
        for (int step : new int[] {3, 6, 12, 20}) {
            int cell = grid.locate(bore.x() + step * CELL, bore.y());
            double distance = Math.hypot(grid.centreX(cell) - bore.x(), grid.centreY(cell) - bore.y());
            double expected = solution.steady().drawdown(RATE, distance);
            findings.compare(Comparison.withFormula(
                    place + ", steady drawdown at " + Math.round(distance) + " m",
                    "m",
                    expected,
                    -steady[cell],
                    Bars.away(expected)));
        }
    }

    private static FlowProblem problem(RectilinearGrid grid, SealingBed bed, Bore bore) {
        return Field.problem(Aquifer.homogeneous(grid, T, S), Optional.of(bed), List.of(), bore);
    }

    private static DrawdownCheck.ClosedForm around(Bore bore, RadialSolution solution) {
        return (x, y, day) -> solution.drawdown(RATE, Math.hypot(x - bore.x(), y - bore.y()), day);
    }

    private static ValidationCase storingBed() {
        return new ValidationCase(
                "hantush-1960",
                "Hantush: a sealing bed that gives up its own water first",
                Part.SIMULATOR,
                List.of(new Source(
                        "Hantush",
                        1960,
                        "Journal of Geophysical Research 65(11), 3713-3725",
                        "early and late solution and their Laplace transform",
                        Standing.MEMORY)),
                "Water released by the bed, by ten relaxation terms in the simulator, acts as the exact diffusion through"
                        + " the bed does: early by H(u, beta), late by the leaky well function with S + S'/3, and in"
                        + " between by inversion of the transform.",
                "A bed of layers, or one closed above.",
                SLOW,
                findings -> {
                    storing(Placement.CENTRE, findings);
                    storing(Placement.anywhere().get(0), findings);
                });
    }

    private static void storing(Placement place, Findings findings) {
        RectilinearGrid grid = grid(150_000);
        double thickness = 50;
        double conductivity = 1e-4;
        double specificStorage = 2e-5;
        Bore bore = Field.pumped("A", place.x() * CELL, place.y() * CELL, Schedule.constant(RATE));
        FlowProblem problem = problem(grid, Field.bed(grid, thickness, conductivity, specificStorage), bore);
        StoringBedSolution solution =
                new StoringBedSolution(T, S, thickness / conductivity, specificStorage * thickness, BedTop.FIXED_HEAD);
        double response = solution.bedResponseTime();
        // The published early and late forms where they hold, the transform between them.
        DrawdownCheck.ClosedForm closedForm = (x, y, day) -> {
            double distance = Math.hypot(x - bore.x(), y - bore.y());
            if (day < response / 20) {
                return solution.earlyDrawdown(RATE, distance, day);
            }
            return day > 10 * response
                    ? solution.lateDrawdown(RATE, distance, day)
                    : solution.drawdown(RATE, distance, day);
        };
        var check = new DrawdownCheck(problem, closedForm, "Hantush 1960", place.toString());
        List<State> states = Field.run(problem, Field.days(0.3, 12_000, 14));
        check.compare(states, findings);
        findings.note("The bed adjusts in b'² Ss'/K' = " + Math.round(response) + " d.");
        findings.plot(check.overTime(states, true));
    }
}

package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.SLOW;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.analytic.FreeFlowingBoreSolution;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.ValidationCase;

/** Bores that flow by themselves. */
final class FreeFlowCases {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double CELL = 10;
    private static final double HEAD_ABOVE_OUTLET = 12;

    private FreeFlowCases() {}

    static List<ValidationCase> all() {
        return List.of(new ValidationCase(
                "free-flow",
                "Jacob and Lohman: decline of a free-flowing bore over five decades of alpha",
                Part.SIMULATOR,
                List.of(new Source(
                        "Jacob and Lohman",
                        1952,
                        "Transactions AGU 33(4), 559-569",
                        "Q = 2 pi T s_w G(alpha)",
                        Standing.MEMORY)),
                "The outlet rule, solved together with the aquifer in each step, gives the published decline of"
                        + " discharge, with the bore at the centre of a cell and elsewhere in it.",
                "Losses in casing and screen; several bores at once.",
                SLOW,
                findings -> {
                    decline(Placement.CENTRE, findings);
                    decline(Placement.anywhere().get(1), findings);
                }));
    }

    private static void decline(Placement place, Findings findings) {
        Axis axis = new Spacing(CELL, 1.12, 60_000).bothWays(12);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Bore bore = Field.bore("A", place.x() * CELL, place.y() * CELL, new Operation.FreeFlow(-HEAD_ABOVE_OUTLET));
        FlowProblem problem = Field.problem(Aquifer.homogeneous(grid, T, S), Optional.empty(), List.of(), bore);
        FreeFlowingBoreSolution solution = new FreeFlowingBoreSolution(T, S, Field.RADIUS);
        double dayOfAlphaOne = S * Field.RADIUS * Field.RADIUS / T;
        List<State> states = Field.run(problem, Field.days(1e5 * dayOfAlphaOne, 1e10 * dayOfAlphaOne, 16));
        double[] alphas = states.stream()
                .mapToDouble(state -> state.day() / dayOfAlphaOne)
                .toArray();
        for (int i = 0; i < alphas.length; i++) {
            double expected =
                    solution.discharge(HEAD_ABOVE_OUTLET, states.get(i).day());
            findings.compare(Comparison.withFormula(
                    place + ", discharge at alpha = " + Figures.significant(alphas[i], 3),
                    "m³/d",
                    expected,
                    states.get(i).rate()[0],
                    Bars.discharge(expected)));
        }
        double[] lineAlphas = Field.days(alphas[0], alphas[alphas.length - 1], 100);
        double[] line = new double[lineAlphas.length];
        for (int i = 0; i < line.length; i++) {
            line[i] = solution.discharge(HEAD_ABOVE_OUTLET, lineAlphas[i] * dayOfAlphaOne);
        }
        findings.plot(new Plot(
                place + ": discharge over alpha",
                Plot.Scale.logarithmic("alpha = T t/(S r_w²)"),
                Plot.Scale.linear("discharge (m³/d)"),
                List.of(
                        new Series("Jacob and Lohman", Series.Kind.PUBLISHED, 0, lineAlphas, line),
                        new Series(
                                "Headfall",
                                Series.Kind.OURS,
                                0,
                                alphas,
                                states.stream()
                                        .mapToDouble(state -> state.rate()[0])
                                        .toArray()))));
    }
}

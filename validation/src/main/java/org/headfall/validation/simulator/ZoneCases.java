package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.ThiemSolution;
import org.headfall.solver.analytic.side.TwoZoneSolution;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.ValidationCase;

/** Aquifers of two zones. */
final class ZoneCases {

    private static final double RATE = 1500;
    private static final double CELL = 100;

    private ZoneCases() {}

    static List<ValidationCase> all() {
        return List.of(straightContact(), disc());
    }

    private static ValidationCase straightContact() {
        return new ValidationCase(
                "straight-contact",
                "A straight contact of two zones, T 50 beside T 500, by images",
                Part.SIMULATOR,
                List.of(new Source(
                        "Carslaw and Jaeger",
                        1959,
                        "Conduction of heat in solids, 2nd ed.",
                        "section 14.7, here for equal diffusivity",
                        Standing.MEMORY)),
                "The harmonic mean of T at a face carries flow across a tenfold jump of T, seen from a bore in either zone.",
                "A contact that runs across cells; zones of unlike diffusivity; times before 50 S cell²/T = 0.5 d.",
                FAST,
                findings -> {
                    contact(7, Placement.CENTRE, findings);
                    contact(7, Placement.anywhere().get(1), findings);
                    contact(-8, Placement.anywhere().get(2), findings);
                });
    }

    private static void contact(int column, Placement place, Findings findings) {
        double diffusivity = 1e6;
        Axis axis = new Spacing(CELL, 1.1, 80_000).bothWays(28);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Bore bore = Field.pumped("A", (column + place.x()) * CELL, place.y() * CELL, Schedule.constant(RATE));
        TwoZoneSolution solution = new TwoZoneSolution(50, 500, diffusivity);
        PumpedBore published = new PumpedBore(bore.x(), bore.y(), RATE);
        FlowProblem problem = Field.problem(
                Field.aquifer(grid, (x, y) -> x < 0 ? 50 : 500.0, (x, y) -> (x < 0 ? 50 : 500) / diffusivity),
                Optional.empty(),
                List.of(),
                bore);
        String label = "bore in T " + (column < 0 ? "50" : "500") + ", " + place;
        var check = new DrawdownCheck(problem, (x, y, day) -> solution.drawdown(published, x, y, day), "images", label);
        List<State> states = Field.run(problem, Field.days(0.5, 100, 8));
        check.compare(states, findings);
        findings.plot(check.overTime(states, false));
    }

    private static ValidationCase disc() {
        return new ValidationCase(
                "radial-zones",
                "A disc of T 50 around the bore in an aquifer of T 500, steady",
                Part.SIMULATOR,
                List.of(new Source(
                        "Thiem",
                        1906,
                        "Hydrologische Methoden",
                        "logarithms of the two zones in series",
                        Standing.QUOTED)),
                "Flow through a round contact, drawn on square cells as stairs, loses the head it should.",
                "Unsteady flow; how well stairs do with cells larger than a fiftieth of the disc.",
                FAST,
                ZoneCases::radialZones);
    }

    private static void radialZones(Findings findings) {
        double cell = 31.25;
        double disc = 1525;
        Placement place = Placement.anywhere().get(0);
        Axis axis = Axis.uniform(-5000, cell, 320);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Bore bore = Field.pumped("A", place.x() * cell, place.y() * cell, Schedule.constant(RATE));
        ThiemSolution inner = new ThiemSolution(50);
        ThiemSolution outer = new ThiemSolution(500);
        double far = 10_000;
        DrawdownCheck.ClosedForm closedForm = (x, y, day) -> {
            double distance = Math.hypot(x - bore.x(), y - bore.y());
            return distance >= disc
                    ? outer.drawdownDifference(RATE, distance, far)
                    : inner.drawdownDifference(RATE, distance, disc) + outer.drawdownDifference(RATE, disc, far);
        };
        Aquifer aquifer = Field.aquifer(
                grid, (x, y) -> Math.hypot(x - bore.x(), y - bore.y()) < disc ? 50 : 500.0, (x, y) -> 2e-4);
        FlowProblem problem =
                Field.problem(aquifer, Optional.empty(), Field.rim(grid, (x, y) -> -closedForm.at(x, y, 0)), bore);
        double[] steady = Field.steady(problem);
        List<State> states = Field.run(problem, steady, 0.0, 100);
        double atWall = closedForm.atWall(bore, 0);
        findings.compare(Comparison.withFormula(
                "drawdown in the bore", "m", atWall, -states.get(1).wallHead()[0], Bars.atBore(atWall)));
        int points = 120;
        double[] distances = new double[points];
        double[] ours = new double[points];
        double[] expected = new double[points];
        for (int i = 0; i < points; i++) {
            int at = grid.locate(bore.x() + (i + 2) * cell, bore.y() + i * cell / 4);
            distances[i] = Math.hypot(grid.centreX(at) - bore.x(), grid.centreY(at) - bore.y());
            ours[i] = -steady[at];
            expected[i] = closedForm.at(grid.centreX(at), grid.centreY(at), 0);
            if (distances[i] >= 2 * cell && Math.abs(distances[i] - disc) > 2 * cell) {
                findings.compare(Comparison.withFormula(
                        "drawdown at " + Math.round(distances[i]) + " m",
                        "m",
                        expected[i],
                        ours[i],
                        Bars.away(expected[i])));
            }
        }
        findings.plot(new Plot(
                "steady drawdown with distance",
                Plot.Scale.logarithmic("distance from the bore (m)"),
                Plot.Scale.linear("drawdown (m)"),
                List.of(
                        new Series("two logarithms", Series.Kind.PUBLISHED, 0, distances, expected),
                        new Series("Headfall", Series.Kind.OURS, 0, distances, ours))));
    }
}

package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.analytic.side.BoreInUniformFlow;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.ValidationCase;

/** Steady fields: many bores at once, and a bore in a regional flow. */
final class SteadyFieldCases {

    private static final double T = 200;
    private static final double S = 2e-4;

    private SteadyFieldCases() {}

    static List<ValidationCase> all() {
        return List.of(tenBores(), uniformFlow());
    }

    private static ValidationCase tenBores() {
        return new ValidationCase(
                "ten-bores",
                "Steady interference of ten bores at random places, two of them in one cell",
                Part.SIMULATOR,
                List.of(new Source(
                        "Thiem",
                        1906,
                        "Hydrologische Methoden",
                        "sum of logarithms, bore radii included",
                        Standing.QUOTED)),
                "Each bore's level has its own drawdown down to its radius and what all others take, wherever the bores"
                        + " stand in their cells and to each other.",
                "T that varies between the bores; bores within six cells of the rim.",
                FAST,
                SteadyFieldCases::interference);
    }

    private static void interference(Findings findings) {
        double cell = 250;
        Axis axis = Axis.uniform(-10_000, cell, 80);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Random random = new Random(Placement.SEED);
        List<Bore> bores = new ArrayList<>();
        double[] rates = new double[10];
        for (int i = 0; i < rates.length; i++) {
            rates[i] = 500 + 2000 * random.nextDouble();
            // The last bore stands in the cell of the first.
            Bore first = i == 9 ? bores.get(0) : null;
            int home = first == null ? 0 : grid.locate(first.x(), first.y());
            double x = first == null
                    ? -3000 + 6000 * random.nextDouble()
                    : axis.edge(grid.column(home)) + cell * random.nextDouble();
            double y = first == null
                    ? -3000 + 6000 * random.nextDouble()
                    : axis.edge(grid.row(home)) + cell * random.nextDouble();
            bores.add(Field.pumped("B" + (i + 1), x, y, Schedule.constant(rates[i])));
        }
        DrawdownCheck.ClosedForm sum = (x, y, day) -> {
            double drawdown = 0;
            for (int i = 0; i < rates.length; i++) {
                Bore bore = bores.get(i);
                drawdown += rates[i] / (2 * Math.PI * T) * Math.log(20_000 / Math.hypot(x - bore.x(), y - bore.y()));
            }
            return drawdown;
        };
        FlowProblem problem = Field.problem(
                Aquifer.homogeneous(grid, T, S),
                Optional.empty(),
                Field.rim(grid, (x, y) -> -sum.at(x, y, 0)),
                bores.toArray(new Bore[0]));
        // A run that starts in the steady state stays there and tells the levels in the bores.
        double[] steady = Field.steady(problem);
        List<State> states = Field.run(problem, steady, 0.0, 1000);
        new DrawdownCheck(problem, sum, "sum of logarithms", "seed " + Placement.SEED)
                .compare(states.subList(1, 2), findings);
        profile(grid, steady, sum, bores.get(0), findings);
    }

    private static void profile(
            RectilinearGrid grid, double[] head, DrawdownCheck.ClosedForm sum, Bore bore, Findings findings) {
        int row = grid.row(grid.locate(bore.x(), bore.y()));
        double[] x = new double[grid.columns()];
        double[] ours = new double[x.length];
        double[] expected = new double[x.length];
        for (int column = 0; column < x.length; column++) {
            int cell = grid.cell(column, row);
            x[column] = grid.centreX(cell);
            ours[column] = -head[cell];
            expected[column] = sum.at(grid.centreX(cell), grid.centreY(cell), 0);
        }
        findings.plot(new Plot(
                "steady drawdown along the row of the first bore",
                Plot.Scale.linear("easting (m)"),
                Plot.Scale.linear("drawdown (m)"),
                List.of(
                        new Series("sum of logarithms", Series.Kind.PUBLISHED, 0, x, expected),
                        new Series("Headfall, cell centres", Series.Kind.OURS, 0, x, ours))));
    }

    private static ValidationCase uniformFlow() {
        return new ValidationCase(
                "uniform-flow",
                "A bore in a regional flow: stagnation point and width of the capture zone",
                Part.SIMULATOR,
                List.of(
                        new Source(
                                "Bear",
                                1979,
                                "Hydraulics of Groundwater",
                                "chapter 8, stagnation point and dividing line",
                                Standing.MEMORY),
                        new Source("Grubb", 1993, "Ground Water 31(1), 27-32", "dividing line", Standing.MEMORY)),
                "Flow, and not only head, is right: where the water stands still below the bore, and how wide the band is"
                        + " that the bore catches.",
                "Travel times; bands in an aquifer whose T varies.",
                FAST,
                SteadyFieldCases::captureZone);
    }

    private static void captureZone(Findings findings) {
        double cell = 50;
        double gradient = 2e-3;
        double rate = 1200;
        Placement place = Placement.anywhere().get(3);
        Axis axis = Axis.uniform(-4000, cell, 160);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        Bore bore = Field.pumped("A", place.x() * cell, place.y() * cell, Schedule.constant(rate));
        BoreInUniformFlow solution = new BoreInUniformFlow(T, gradient, rate);
        FlowProblem problem = Field.problem(
                Aquifer.homogeneous(grid, T, S),
                Optional.empty(),
                Field.rim(
                        grid,
                        (x, y) -> -gradient * x
                                + rate / (2 * Math.PI * T) * Math.log(Math.hypot(x - bore.x(), y - bore.y()))),
                bore);
        double[] head;
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            head = simulation.steadyHead(0);
        }
        double expected = solution.stagnationDistance();
        findings.compare(Comparison.withFormula(
                "distance of the stagnation point",
                "m",
                expected,
                stagnationDistance(grid, head, bore),
                Bars.derived(0.005 * expected, "0.5 % of the slope of the cone, which falls with distance")));
        int columns = 30;
        double[] distances = new double[columns];
        double[] widths = new double[columns];
        double[] lineWidths = new double[columns];
        for (int i = 0; i < columns; i++) {
            int column = grid.x().locate(bore.x() - 3800 + 120 * i);
            double face = grid.x().edge(column + 1);
            distances[i] = face - bore.x();
            widths[i] = captureWidth(grid, head, bore, rate, column);
            lineWidths[i] = solution.widthAt(distances[i]);
            if (i % 4 == 0 || i == columns - 1) {
                findings.compare(Comparison.withFormula(
                        "width of the capture zone " + Math.round(-distances[i]) + " m up-gradient",
                        "m",
                        lineWidths[i],
                        widths[i],
                        Bars.derived(0.005 * lineWidths[i], "0.5 % of the flow towards the bore")));
            }
        }
        findings.plot(new Plot(
                "width of the capture zone",
                Plot.Scale.linear("distance from the bore, up-gradient negative (m)"),
                Plot.Scale.linear("width (m)"),
                List.of(
                        new Series("dividing line", Series.Kind.PUBLISHED, 0, distances, lineWidths),
                        new Series("Headfall, flow across faces", Series.Kind.OURS, 0, distances, widths))));
    }

    /** Where the head along the line through the bore, down-gradient, is lowest between bore and regional slope. */
    private static double stagnationDistance(RectilinearGrid grid, double[] head, Bore bore) {
        int first = grid.x().locate(bore.x()) + 4;
        double before = slope(grid, head, bore, first);
        for (int column = first + 1; column < grid.columns() - 2; column++) {
            double after = slope(grid, head, bore, column);
            if (before > 0 && after <= 0) {
                double step = before / (before - after);
                double x = grid.x().centre(column - 1) + step * grid.x().width(column);
                return x - bore.x();
            }
            before = after;
        }
        return Double.NaN;
    }

    /** Slope of head along x by fourth-order differences on the bore's northing. */
    private static double slope(RectilinearGrid grid, double[] head, Bore bore, int column) {
        double width = grid.x().width(column);
        return (8 * (onLine(grid, head, bore, column + 1) - onLine(grid, head, bore, column - 1))
                        - (onLine(grid, head, bore, column + 2) - onLine(grid, head, bore, column - 2)))
                / (12 * width);
    }

    /** Head of a column on the bore's northing, by the parabola through three rows. */
    private static double onLine(RectilinearGrid grid, double[] head, Bore bore, int column) {
        int row = grid.y().locate(bore.y());
        double share = (bore.y() - grid.y().centre(row)) / grid.y().width(row);
        double south = head[grid.cell(column, row - 1)];
        double own = head[grid.cell(column, row)];
        double north = head[grid.cell(column, row + 1)];
        return own + 0.5 * share * (north - south) + 0.5 * share * share * (north - 2 * own + south);
    }

    /** Width of the band around the bore's northing that carries the bore's rate across the eastern face of a column. */
    private static double captureWidth(RectilinearGrid grid, double[] head, Bore bore, double rate, int column) {
        return halfWidth(grid, head, bore, rate / 2, column, 1) + halfWidth(grid, head, bore, rate / 2, column, -1);
    }

    private static double halfWidth(
            RectilinearGrid grid, double[] head, Bore bore, double flow, int column, int direction) {
        int row = grid.y().locate(bore.y());
        double width = grid.y().width(row);
        double part = direction > 0
                ? grid.y().edge(row + 1) - bore.y()
                : bore.y() - grid.y().edge(row);
        double crossed = 0;
        double half = 0;
        while (true) {
            double perMetre = T
                    * (head[grid.cell(column, row)] - head[grid.cell(column + 1, row)])
                    / grid.x().width(column);
            if (crossed + perMetre * part >= flow) {
                return half + (flow - crossed) / perMetre;
            }
            crossed += perMetre * part;
            half += part;
            part = width;
            row += direction;
        }
    }
}

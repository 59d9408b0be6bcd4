package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.analytic.side.BoreInUniformFlow;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.table.ReferenceTable;

/** Steady fields: many bores at once, and a bore in a regional flow. */
final class SteadyFieldCases {

    private static final double T = 200;
    private static final double S = 2e-4;

    /** Cells between a spring and the rim of its grid. */
    private static final int HALF_CELLS = 60;

    /** Cells along both axes to where head is that of the logarithm. */
    private static final int FAR_CELLS = 12;

    private SteadyFieldCases() {}

    static List<ValidationCase> all() {
        return List.of(tenBores(), uniformFlow(), equivalentRadius());
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

    private static ValidationCase equivalentRadius() {
        return new ValidationCase(
                "equivalent-radius",
                "Peaceman: head of a cell that gives all the water itself, on squares, rectangles and with unlike T",
                Part.SIMULATOR,
                List.of(
                        new Source(
                                "Peaceman",
                                1983,
                                "SPE Journal 23(3), 531-543",
                                "equivalent radius r0 with 0.28",
                                Standing.QUOTED),
                        new Source(
                                "General-purpose libraries",
                                2026,
                                "exact constant of the five-point operator, exp(-gamma)/2, for that 0.28",
                                "reference table peaceman_r0.csv",
                                Standing.RECOMPUTED)),
                "Conductances of faces of any shape and with any Tx/Ty: the cell of a spring, which takes its water from"
                        + " that cell alone, stands at the head that the logarithm has at r0.",
                "Bores, whose near field is taken out of the grid and needs no such radius.",
                FAST,
                SteadyFieldCases::springCells);
    }

    private static void springCells(Findings findings) {
        for (var row : ReferenceTable.rows("peaceman_r0.csv", 10)) {
            double width = ReferenceTable.number(row, "dx");
            double height = ReferenceTable.number(row, "dy");
            double tx = 100 * ReferenceTable.number(row, "Tx");
            double ty = 100 * ReferenceTable.number(row, "Ty");
            String label = "cells " + Math.round(width) + " m x " + Math.round(height) + " m, Tx/Ty "
                    + Figures.significant(tx / ty, 3);
            double exact = ReferenceTable.number(row, "r0_exact");
            double stretched = ReferenceTable.number(row, "rw_factor");
            double fall = fallPerLogarithm(width, height, tx, ty, exact * stretched);
            double stretch = Math.sqrt(Math.sqrt(ty / tx));
            double far = Math.hypot(FAR_CELLS * width * stretch, FAR_CELLS * height / stretch);
            double radius = far * Math.exp(-fall) / stretched;
            findings.compare(Comparison.withFormula(
                    label + ", r0 of the exact constant",
                    "m",
                    exact,
                    radius,
                    Tolerance.share(0.001, exact, "0.1 %: differences at the far cell, 12 cells off")));
            double printed = ReferenceTable.number(row, "r0_028");
            findings.compare(Comparison.withFormula(
                    label + ", r0 of Peaceman's 0.28",
                    "m",
                    printed,
                    radius,
                    Tolerance.share(0.0035, printed, "0.1 %, and the 0.25 % by which 0.28 is rounded")));
        }
    }

    /**
     * Head of a cell some cells off along both axes less that of a spring's cell, over Q/(2 pi T). The outlet is put so that
     * the spring should give what the heads of the rim are meant for; then the shape of the rim does not matter.
     */
    private static double fallPerLogarithm(double width, double height, double tx, double ty, double radius) {
        Axis x = Axis.uniform(-(HALF_CELLS + 0.5) * width, width, 2 * HALF_CELLS + 1);
        Axis y = Axis.uniform(-(HALF_CELLS + 0.5) * height, height, 2 * HALF_CELLS + 1);
        RectilinearGrid grid = new RectilinearGrid(x, y);
        double conductance = 50;
        double meant = 2 * Math.PI * Math.sqrt(tx * ty);
        double outlet = Math.log(radius) - meant / conductance;
        double stretch = Math.sqrt(Math.sqrt(ty / tx));
        FlowProblem problem = new FlowProblem(
                Field.anisotropic(grid, tx, ty, S),
                Optional.empty(),
                Field.rim(grid, (px, py) -> Math.log(Math.hypot(px * stretch, py / stretch))),
                List.of(),
                List.of(new Spring("A", 0, 0, outlet, conductance)),
                List.of());
        double[] head = Field.steady(problem);
        double atSpring = head[grid.locate(0, 0)];
        double discharge = conductance * (atSpring - outlet);
        double far = head[grid.locate(FAR_CELLS * width, FAR_CELLS * height)];
        return (far - atSpring) * meant / discharge;
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

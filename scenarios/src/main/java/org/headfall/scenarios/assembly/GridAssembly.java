package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.GridSpecification;
import org.headfall.scenarios.scenario.GridSpecification.Refinement;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.grid.RefinedAxis;
import org.jspecify.annotations.Nullable;

/** Divides the extent into cells, smaller ones around bores where the scenario asks for them. */
final class GridAssembly {
    private final Problems problems;

    GridAssembly(Problems problems) {
        this.problems = problems;
    }

    /** The grid, or null after a problem has been reported. */
    @Nullable
    RectilinearGrid grid(Scenario scenario) {
        GridSpecification grid = scenario.grid();
        Extent extent = grid.extent();
        List<Position> points = refinedAround(scenario);
        Axis x = axis(
                grid,
                extent.west(),
                extent.east(),
                points.stream().mapToDouble(Position::x).toArray());
        Axis y = axis(
                grid,
                extent.south(),
                extent.north(),
                points.stream().mapToDouble(Position::y).toArray());
        if ((long) x.cells() * y.cells() > GridSpecification.MOST_CELLS) {
            String found = x.cells() + " x " + y.cells() + " cells after refinement";
            String allowed = "at most " + GridSpecification.MOST_CELLS + " cells: a larger cell, down_to or growth";
            problems.add(grid.place(), "grid", Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
            return null;
        }
        return new RectilinearGrid(x, y);
    }

    private static List<Position> refinedAround(Scenario scenario) {
        List<Position> points = new ArrayList<>();
        scenario.grid().refinement().ifPresent(refinement -> {
            scenario.bores().forEach(bore -> points.add(bore.position()));
            if (refinement.around() == GridSpecification.Around.BORES_AND_SPRINGS) {
                scenario.springs().forEach(spring -> points.add(spring.position()));
            }
        });
        return points;
    }

    private static Axis axis(GridSpecification grid, double start, double end, double[] points) {
        if (grid.refinement().isEmpty() || points.length == 0) {
            int cells = (int) Math.ceil((end - start) / grid.cell() - 1e-9);
            double[] edges = new double[Math.max(1, cells) + 1];
            for (int i = 0; i < edges.length; i++) {
                edges[i] = start + (end - start) * i / (edges.length - 1);
            }
            return Axis.ofEdges(edges);
        }
        Refinement refinement = grid.refinement().get();
        return new RefinedAxis(grid.cell(), refinement.downTo(), refinement.growth()).between(start, end, points);
    }
}

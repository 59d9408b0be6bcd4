package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What A does at B, B does at A (reciprocity of a symmetric operator; Green 1828), before both ways are averaged: in random
 * fields, cells of different sizes, with and without a storing bed, for bores anywhere in their cells.
 */
class ReciprocityTest {

    private static final double[] SHIFTS = {10, 1, 0.1, 0.01, 1e-4};

    private static double[] random(Random random, int count, double median, double deviation) {
        double[] values = new double[count];
        Arrays.setAll(values, i -> median * Math.exp(deviation * random.nextGaussian()));
        return values;
    }

    private static Axis axis(Random random, int cells) {
        double[] edges = new double[cells + 1];
        for (int i = 0; i < cells; i++) {
            edges[i + 1] = edges[i] + 200 * (1 + random.nextDouble());
        }
        return Axis.ofEdges(edges);
    }

    private static FlowProblem field(Random random, boolean bed) {
        RectilinearGrid grid = new RectilinearGrid(axis(random, 24), axis(random, 20));
        int cells = grid.cellCount();
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid,
                random(random, cells, 200, 0.7),
                random(random, cells, 200, 0.7),
                random(random, cells, 2e-4, 0.3),
                new double[cells],
                random(random, cells, -50, 0),
                active);
        Optional<SealingBed> above = bed
                ? Optional.of(new SealingBed(
                        random(random, cells, 50, 0.2),
                        random(random, cells, 1e-5, 0.5),
                        random(random, cells, 3e-6, 0),
                        random(random, cells, 100, 0)))
                : Optional.empty();
        return new FlowProblem(
                aquifer,
                above,
                List.of(new OuterBoundary.FixedHead(
                        "west", SideSegment.whole(Side.WEST, grid), Schedule.constant(100))),
                List.of(),
                List.of(),
                List.of());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void holdsToOneInAHundredMillion(long seed) {
        Random random = new Random(seed);
        FlowProblem problem = field(random, seed % 2 == 0);
        RectilinearGrid grid = problem.aquifer().grid();
        List<CellWeights> places = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            double x = grid.x().start()
                    + (0.2 + 0.6 * random.nextDouble())
                            * (grid.x().end() - grid.x().start());
            double y = grid.y().start()
                    + (0.2 + 0.6 * random.nextDouble())
                            * (grid.y().end() - grid.y().start());
            places.add(NearField.at(problem.aquifer(), problem.boundaries(), x, y, 0.1)
                    .weights());
        }
        places.add(CellWeights.single(grid.cellCount() / 2));
        try (WorkerTeam team = new WorkerTeam(1)) {
            ShiftedSolves solves = new ShiftedSolves(problem, places, team);
            for (double shift : SHIFTS) {
                solves.solve(shift);
                for (int i = 0; i < places.size(); i++) {
                    double own = places.get(i).of(solves.drawdown(i));
                    for (int j = 0; j < i; j++) {
                        double there = places.get(i).of(solves.drawdown(j));
                        double back = places.get(j).of(solves.drawdown(i));
                        assertEquals(
                                there, back, 1e-8 * own, "seed " + seed + ", shift " + shift + ", " + i + ", " + j);
                    }
                }
            }
        }
    }
}

package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.grid.RefinedAxis;
import org.junit.jupiter.api.Test;

/** The choice of cells is common practice, no source: halves of halves. */
class SpreadCellsTest {

    private static final RectilinearGrid GRID = new RectilinearGrid(
            new RefinedAxis(500, 50, 1.3).between(0, 20_000, 6_000),
            new RefinedAxis(400, 60, 1.3).between(0, 9_000, 4_000));

    private static int[] some(double share, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, GRID.cellCount())
                .filter(cell -> random.nextDouble() < share)
                .toArray();
    }

    /** The same by sorting lists. */
    private static void reference(List<Integer> cells, int count, List<Integer> chosen) {
        double[] x = cells.stream().mapToDouble(GRID::centreX).toArray();
        double[] y = cells.stream().mapToDouble(GRID::centreY).toArray();
        if (count == 1) {
            double middleX = Arrays.stream(x).average().orElseThrow();
            double middleY = Arrays.stream(y).average().orElseThrow();
            chosen.add(cells.stream()
                    .min(Comparator.comparingDouble(
                            cell -> Math.hypot(GRID.centreX(cell) - middleX, GRID.centreY(cell) - middleY)))
                    .orElseThrow());
            return;
        }
        List<Integer> sorted = new ArrayList<>(cells);
        sorted.sort(Comparator.comparingDouble(extent(x) >= extent(y) ? GRID::centreX : GRID::centreY));
        int fewer = count / 2;
        int at = (int) ((long) sorted.size() * fewer / count);
        reference(sorted.subList(0, at), fewer, chosen);
        reference(sorted.subList(at, sorted.size()), count - fewer, chosen);
    }

    private static double extent(double[] values) {
        return Arrays.stream(values).max().orElseThrow()
                - Arrays.stream(values).min().orElseThrow();
    }

    @Test
    void cellsAreThoseFoundBySorting() {
        for (int draw = 0; draw < 20; draw++) {
            int[] among = some(draw % 2 == 0 ? 1 : 0.3, draw);
            int count = 1 + 13 * draw;
            List<Integer> expected = new ArrayList<>();
            reference(Arrays.stream(among).boxed().toList(), count, expected);
            int[] before = among.clone();
            assertArrayEquals(
                    expected.stream().mapToInt(Integer::intValue).toArray(),
                    new SpreadCells(GRID).choose(among, count),
                    "seed " + draw);
            assertArrayEquals(before, among);
        }
    }

    @Test
    void allCellsAreChosenWhereThereAreNoMore() {
        int[] among = some(0.01, 4);
        int[] chosen = new SpreadCells(GRID).choose(among, 10 * among.length);
        assertArrayEquals(among, Arrays.stream(chosen).sorted().toArray());
        assertEquals(1, new SpreadCells(GRID).choose(among, 1).length);
    }

    /** A million cells in four parts: each part is a rectangle, and its cell stands in the middle of it. */
    @Test
    void aMillionCellsAreSpread() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 10, 1000), Axis.uniform(0, 10, 1000));
        int[] chosen = new SpreadCells(grid)
                .choose(IntStream.range(0, grid.cellCount()).toArray(), 4);
        for (int cell : chosen) {
            assertTrue(Math.abs(Math.abs(grid.centreX(cell) - 5000) - 2500) <= 10, "" + grid.centreX(cell));
            assertTrue(Math.abs(Math.abs(grid.centreY(cell) - 5000) - 2500) <= 10, "" + grid.centreY(cell));
        }
    }
}

package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.grid.RectilinearGrid;

/** Some cells spread evenly over many: halves of halves, cut across their longer extent, and the middle cell of each part. */
final class SpreadCells {

    private final RectilinearGrid grid;

    SpreadCells(RectilinearGrid grid) {
        this.grid = grid;
    }

    /**
     * Chooses cells.
     *
     * @param among the cells to choose from, at least one
     * @param count how many, at most
     */
    int[] choose(int[] among, int count) {
        List<Integer> chosen = new ArrayList<>();
        split(Arrays.stream(among).boxed().toList(), Math.min(count, among.length), chosen);
        return chosen.stream().mapToInt(Integer::intValue).toArray();
    }

    private void split(List<Integer> cells, int count, List<Integer> chosen) {
        double[] x = cells.stream().mapToDouble(grid::centreX).toArray();
        double[] y = cells.stream().mapToDouble(grid::centreY).toArray();
        if (count == 1) {
            chosen.add(nearest(cells, mean(x), mean(y)));
            return;
        }
        boolean alongX = extent(x) >= extent(y);
        List<Integer> sorted = new ArrayList<>(cells);
        sorted.sort((a, b) -> alongX
                ? Double.compare(grid.centreX(a), grid.centreX(b))
                : Double.compare(grid.centreY(a), grid.centreY(b)));
        int fewer = count / 2;
        int at = (int) ((long) sorted.size() * fewer / count);
        split(sorted.subList(0, at), fewer, chosen);
        split(sorted.subList(at, sorted.size()), count - fewer, chosen);
    }

    private int nearest(List<Integer> cells, double x, double y) {
        int best = cells.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (int cell : cells) {
            double distance = Math.hypot(grid.centreX(cell) - x, grid.centreY(cell) - y);
            if (distance < least) {
                least = distance;
                best = cell;
            }
        }
        return best;
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double extent(double[] values) {
        return Arrays.stream(values).max().orElseThrow()
                - Arrays.stream(values).min().orElseThrow();
    }
}

package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.headfall.scenarios.spatial.Extent;
import org.junit.jupiter.api.Test;

class CellSamplerTest {

    @Test
    void sameCellsGiveTheSameValues() {
        Raster raster = plane(7, 5, 10);
        assertArrayEquals(
                raster.values(),
                new CellSampler(raster.edgesX(), raster.edgesY()).cellValues(raster, Averaging.ARITHMETIC),
                1e-12);
    }

    @Test
    void finerGridsInterpolateAPlaneExactlyInsideTheCentres() {
        Random random = new Random(11);
        Raster raster = plane(20, 20, 10);
        double[] edges = random.doubles(60, 10, 190).sorted().toArray();
        double[] values = new CellSampler(edges, edges).cellValues(raster, Averaging.ARITHMETIC);
        int cells = edges.length - 1;
        for (int row = 0; row < cells; row++) {
            for (int column = 0; column < cells; column++) {
                boolean fine = edges[column + 1] - edges[column] < 10 && edges[row + 1] - edges[row] < 10;
                double x = 0.5 * (edges[column] + edges[column + 1]);
                double y = 0.5 * (edges[row] + edges[row + 1]);
                if (fine) {
                    assertEquals(3 + 0.5 * x - 0.2 * y, values[row * cells + column], 1e-9, "seed 11, " + x + ", " + y);
                }
            }
        }
    }

    @Test
    void coarserAlignedCellsTakeTheMeanOfTheirBlock() {
        Random random = new Random(12);
        double[] values = random.doubles(36).toArray();
        Raster raster = new Raster(Raster.evenEdges(0, 1, 6), Raster.evenEdges(0, 1, 6), values);
        double[] means = new CellSampler(Raster.evenEdges(0, 3, 2), Raster.evenEdges(0, 2, 3))
                .cellValues(raster, Averaging.ARITHMETIC);
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 2; column++) {
                double sum = 0;
                for (int k = 0; k < 6; k++) {
                    sum += values[(2 * row + k / 3) * 6 + 3 * column + k % 3];
                }
                assertEquals(sum / 6, means[row * 2 + column], 1e-12, "seed 12");
            }
        }
    }

    @Test
    void unalignedMeansKeepTheTotal() {
        Random random = new Random(13);
        double[] values = random.doubles(100).toArray();
        Raster raster = new Raster(Raster.evenEdges(0, 1, 10), Raster.evenEdges(0, 1, 10), values);
        double[] edges = {0, 1.7, 4.1, 7.2, 10};
        double[] means = new CellSampler(edges, edges).cellValues(raster, Averaging.ARITHMETIC);
        double total = 0;
        for (int i = 0; i < 16; i++) {
            total += means[i] * (edges[i % 4 + 1] - edges[i % 4]) * (edges[i / 4 + 1] - edges[i / 4]);
        }
        double expected = 0;
        for (double value : values) {
            expected += value;
        }
        assertEquals(expected, total, 1e-12, "seed 13");
    }

    @Test
    void geometricMeanIsTheMeanOfLogarithms() {
        Raster raster = new Raster(new double[] {0, 1, 2}, new double[] {0, 1}, new double[] {10, 1000});
        double[] mean =
                new CellSampler(new double[] {0, 2}, new double[] {0, 1}).cellValues(raster, Averaging.GEOMETRIC);
        assertEquals(100, mean[0], 1e-10);
        Raster zero = raster.map(v -> 0);
        assertThrows(
                IllegalArgumentException.class,
                () -> new CellSampler(new double[] {0, 2}, new double[] {0, 1}).cellValues(zero, Averaging.GEOMETRIC));
    }

    @Test
    void holesArePassedOverUntilTheyAreMoreThanHalf() {
        double[] values = {1, Double.NaN, Double.NaN, Double.NaN, 5, 7};
        Raster raster = new Raster(Raster.evenEdges(0, 1, 6), new double[] {0, 1}, values);
        double[] means = new CellSampler(new double[] {0, 2, 4, 6}, new double[] {0, 1})
                .cellValues(raster, Averaging.ARITHMETIC);
        assertArrayEquals(new double[] {1, Double.NaN, 6}, means);
        double[] same = new CellSampler(raster.edgesX(), raster.edgesY()).cellValues(raster, Averaging.ARITHMETIC);
        assertArrayEquals(values, same);
    }

    @Test
    void cellsOutsideTheRasterHaveNoValue() {
        Raster raster = plane(4, 4, 10);
        double[] edges = {-50, -20, -5, -1, 0, 5, 40, 44, 100};
        double[] values = new CellSampler(edges, new double[] {0, 10}).cellValues(raster, Averaging.ARITHMETIC);
        for (int i : new int[] {0, 1, 2, 6, 7}) {
            assertTrue(Double.isNaN(values[i]), "cell " + i + " is " + values[i]);
        }
        assertEquals(raster.value(0, 0), values[4], 1e-12);
    }

    @Test
    void freeSpacingBecomesEvenCells() {
        double[] edgesX = {0, 100, 150, 160, 170, 220, 420};
        Raster grid = new Raster(edgesX, new double[] {0, 100, 200}, new double[12]).map(v -> 8);
        Raster even = CellSampler.even(grid, 25, RasterLimits.DEFAULT).resample(grid, Averaging.ARITHMETIC);
        assertEquals(17, even.columns());
        assertEquals(8, even.rows());
        assertEquals(25, even.evenWidth().orElseThrow());
        assertEquals(0, even.holes());
        assertEquals(8, even.value(16, 7), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> CellSampler.even(grid, 0, RasterLimits.DEFAULT));
        assertThrows(IllegalArgumentException.class, () -> CellSampler.even(grid, 1e-3, RasterLimits.DEFAULT));
    }

    @Test
    void coverageNamesTheMissingSidesAndTheHoles() {
        double[] values = new double[16];
        values[5] = Double.NaN;
        values[15] = Double.NaN;
        Raster raster = new Raster(Raster.evenEdges(1000, 10, 4), Raster.evenEdges(2000, 10, 4), values);
        RasterCoverage coverage = RasterCoverage.of(raster, new Extent(990, 2005, 1030, 2050));
        assertEquals(List.of(new Extent(990, 2005, 1000, 2050), new Extent(1000, 2040, 1030, 2050)), coverage.gaps());
        assertEquals(1, coverage.holes());
        assertEquals(new RasterCoverage.Hole(1015, 2015), coverage.firstHoles().get(0));
        assertTrue(coverage.missing().contains("x 990 to 1000"), coverage.missing());
        assertTrue(RasterCoverage.of(raster, new Extent(1020, 2000, 1040, 2010)).complete());
    }

    @Test
    void coverageSuspectsDegrees() {
        Raster raster = new Raster(new double[] {140, 141}, new double[] {-26, -25}, new double[] {1});
        RasterCoverage coverage = RasterCoverage.of(raster, new Extent(600_000, 7_000_000, 700_000, 7_100_000));
        assertTrue(coverage.degrees());
        assertEquals(List.of(new Extent(600_000, 7_000_000, 700_000, 7_100_000)), coverage.gaps());
    }

    private static Raster plane(int columns, int rows, double cell) {
        double[] values = new double[columns * rows];
        for (int i = 0; i < values.length; i++) {
            double x = (i % columns + 0.5) * cell;
            int row = i / columns;
            double y = (row + 0.5) * cell;
            values[i] = 3 + 0.5 * x - 0.2 * y;
        }
        return new Raster(Raster.evenEdges(0, cell, columns), Raster.evenEdges(0, cell, rows), values);
    }
}

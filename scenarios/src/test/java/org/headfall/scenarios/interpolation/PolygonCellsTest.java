package org.headfall.scenarios.interpolation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.headfall.scenarios.interpolation.PolygonCells.PolygonValue;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class PolygonCellsTest {
    private static final double[] X = {0, 10, 20, 30};
    private static final double[] Y = {0, 10, 20};

    private final PolygonCells cells = new PolygonCells(CellCentres.between(X, Y));
    private final PolygonCover cover = new PolygonCover(X, Y);

    private static Geometry shape(String wellKnownText) throws ParseException {
        return new WKTReader().read(wellKnownText);
    }

    @Test
    void aCellHasTheValueOfThePolygonItsCentreLiesIn() throws Exception {
        double[] values = cells.values(List.of(
                new PolygonValue(shape("POLYGON ((0 0, 16 0, 16 20, 0 20, 0 0))"), 1),
                new PolygonValue(shape("POLYGON ((16 0, 30 0, 30 9, 16 9, 16 0))"), 2)));
        assertArrayEquals(new double[] {1, 1, 2, 1, 1, Double.NaN}, values);
    }

    @Test
    void theLaterOfOverlappingPolygonsCounts() throws Exception {
        PolygonValue all = new PolygonValue(shape("POLYGON ((-5 -5, 50 -5, 50 50, -5 50, -5 -5))"), 1);
        PolygonValue part = new PolygonValue(shape("POLYGON ((12 2, 18 2, 18 8, 12 8, 12 2))"), 2);
        assertArrayEquals(new double[] {1, 2, 1, 1, 1, 1}, cells.values(List.of(all, part)));
        assertArrayEquals(new double[] {1, 1, 1, 1, 1, 1}, cells.values(List.of(part, all)));
    }

    @Test
    void holesAndSeveralPolygonsAreFollowed() throws Exception {
        Geometry withHole = shape("POLYGON ((0 0, 30 0, 30 20, 0 20, 0 0), (11 1, 19 1, 19 19, 11 19, 11 1))");
        assertArrayEquals(new boolean[] {true, false, true, true, false, true}, cells.within(List.of(withHole)));
        Geometry both = shape("MULTIPOLYGON (((0 0, 9 0, 9 9, 0 9, 0 0)), ((21 11, 30 11, 30 20, 21 11)))");
        assertArrayEquals(new boolean[] {true, false, false, false, false, true}, cells.within(List.of(both)));
    }

    @Test
    void aCentreOnTheRimBelongs() throws Exception {
        Geometry touching = shape("POLYGON ((15 5, 40 5, 40 -10, 15 5))");
        assertArrayEquals(new boolean[] {false, true, true, false, false, false}, cells.within(List.of(touching)));
    }

    @Test
    void nothingBeyondTheGridIsTouched() throws Exception {
        assertArrayEquals(new boolean[6], cells.within(List.of(shape("POLYGON ((40 0, 50 0, 50 9, 40 0))"))));
        assertArrayEquals(new boolean[6], cells.within(List.of()));
    }

    @Test
    void sharesAreExactAreas() throws Exception {
        double[] shares = cover.shares(List.of(shape("POLYGON ((5 0, 30 0, 30 12, 5 12, 5 0))")));
        assertArrayEquals(new double[] {0.5, 1, 1, 0.1, 0.2, 0.2}, shares, 1e-14);
        assertArrayEquals(new double[6], cover.shares(List.of()));
    }

    @Test
    void overlappingPolygonsAreCoveredOnce() throws Exception {
        Geometry left = shape("POLYGON ((0 0, 8 0, 8 10, 0 10, 0 0))");
        Geometry right = shape("POLYGON ((6 0, 10 0, 10 10, 6 10, 6 0))");
        assertEquals(1, cover.shares(List.of(left, right))[0], 1e-14);
        assertEquals(0.8, cover.shares(List.of(left, left))[0], 1e-14);
    }

    @Test
    void aPolygonThatTouchesACellInALineCoversNothingOfIt() throws Exception {
        Geometry comb = shape("POLYGON ((0 0, 30 0, 30 10, 25 10, 24 5, 16 5, 15 10, 14 5, 6 5, 5 10, 0 10, 0 0))");
        double[] shares = cover.shares(List.of(comb));
        assertArrayEquals(new double[3], new double[] {shares[3], shares[4], shares[5]}, 1e-14);
        assertEquals(comb.getArea(), 100 * (shares[0] + shares[1] + shares[2]), 1e-10);
    }

    /** Star-shaped polygons of 5 to 300 corners with a hole, on cells of free size. */
    @Test
    void sharesTimesCellAreasAddUpToTheArea() {
        for (long seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double[] x = edges(random, 5 + random.nextInt(60));
            double[] y = edges(random, 5 + random.nextInt(60));
            GeometryFactory factory = new GeometryFactory();
            Coordinate[] outer = star(random, 5 + random.nextInt(300), 20_000, 45_000);
            Coordinate[] inner = star(random, 5 + random.nextInt(30), 1_000, 10_000);
            Geometry area = factory.createPolygon(outer).difference(factory.createPolygon(inner));
            double[] shares = new PolygonCover(x, y).shares(List.of(area));
            double sum = 0;
            for (int cell = 0; cell < shares.length; cell++) {
                int column = cell % (x.length - 1);
                int row = cell / (x.length - 1);
                sum += shares[cell] * (x[column + 1] - x[column]) * (y[row + 1] - y[row]);
            }
            assertEquals(1, sum / area.getArea(), 1e-10, "seed " + seed);
        }
    }

    /** The grid ends within the polygons on all sides; each cell is cut out by itself. */
    @Test
    void sharesEqualThoseOfEachCellCutOut() {
        for (long seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            double[] x =
                    Arrays.stream(edges(random, 8)).map(e -> 20_000 + 0.6 * e).toArray();
            double[] y =
                    Arrays.stream(edges(random, 7)).map(e -> 15_000 + 0.6 * e).toArray();
            GeometryFactory factory = new GeometryFactory();
            Geometry one = factory.createPolygon(star(random, 5 + random.nextInt(60), 15_000, 50_000));
            Geometry other = factory.toGeometry(new Envelope(x[2], 70_000, 10_000, y[4]));
            double[] shares = new PolygonCover(x, y).shares(List.of(one, other));
            for (int cell = 0; cell < shares.length; cell++) {
                int column = cell % 8;
                int row = cell / 8;
                Geometry cut = factory.toGeometry(new Envelope(x[column], x[column + 1], y[row], y[row + 1]));
                double covered = cut.intersection(one.union(other)).getArea();
                assertEquals(covered / cut.getArea(), shares[cell], 1e-9, "seed " + seed + ", cell " + cell);
            }
        }
    }

    private static double[] edges(Random random, int cells) {
        List<Double> inner = new ArrayList<>();
        for (int i = 1; i < cells; i++) {
            inner.add(100_000 * random.nextDouble());
        }
        inner.add(0.0);
        inner.add(100_000.0);
        return inner.stream().sorted().mapToDouble(Double::doubleValue).toArray();
    }

    private static Coordinate[] star(Random random, int corners, double least, double most) {
        Coordinate[] star = new Coordinate[corners + 1];
        for (int i = 0; i < corners; i++) {
            double radius = least + (most - least) * random.nextDouble();
            double angle = 2 * Math.PI * i / corners;
            star[i] = new Coordinate(50_000 + radius * Math.cos(angle), 50_000 + radius * Math.sin(angle));
        }
        star[corners] = star[0].copy();
        return star;
    }
}

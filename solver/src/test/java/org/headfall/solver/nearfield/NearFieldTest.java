package org.headfall.solver.nearfield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import org.ejml.data.DMatrixRMaj;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;

class NearFieldTest {

    private static final RectilinearGrid EVEN = new RectilinearGrid(Axis.uniform(0, 100, 41), Axis.uniform(0, 100, 37));

    private static Aquifer random(RectilinearGrid grid, double spread, long seed) {
        Random random = new Random(seed);
        Aquifer plain = Aquifer.homogeneous(grid, 1, 1e-4);
        double[] t = new double[grid.cellCount()];
        boolean[] active = new boolean[t.length];
        for (int cell = 0; cell < t.length; cell++) {
            t[cell] = 100 * Math.exp(spread * random.nextGaussian());
            active[cell] = random.nextDouble() < 0.8;
        }
        return new Aquifer(grid, t, t, plain.storativity(), plain.top(), plain.bottom(), active);
    }

    private static double sum(CellWeights weights) {
        return DoubleStream.of(weights.weights()).sum();
    }

    /** Mass: what a bore takes from the cells is its discharge, whatever T, the rim and dead cells are. */
    @Test
    void weightsAddUpToOneAndSpareDeadCells() {
        Random random = new Random(3);
        for (int draw = 0; draw < 200; draw++) {
            Aquifer aquifer = random(EVEN, 1.7, draw);
            double x = 4100 * random.nextDouble();
            double y = 3700 * random.nextDouble();
            if (aquifer.active()[EVEN.locate(x, y)]) {
                CellWeights weights = NearField.at(aquifer, List.of(), x, y, 0).weights();
                assertEquals(1, sum(weights), 1e-12);
                for (int cell : weights.cells()) {
                    assertTrue(aquifer.active()[cell]);
                }
            }
        }
    }

    /** Green's formula: a head that satisfies Laplace's equation is seen as it is at the place, to 1e-4 of its span. */
    @Test
    void headsOfFlowWithoutSourcesAreSeenExactly() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        List<DoubleBinaryOperator> heads = List.of(
                (x, y) -> x,
                (x, y) -> y,
                (x, y) -> x * y,
                (x, y) -> x * x - y * y,
                (x, y) -> x * x * x - 3 * x * y * y);
        Random random = new Random(5);
        for (int draw = 0; draw < 50; draw++) {
            double px = 1500 + 1000 * random.nextDouble();
            double py = 1500 + 700 * random.nextDouble();
            NearField field = NearField.at(aquifer, List.of(), px, py, 0);
            for (DoubleBinaryOperator head : heads) {
                double[] cells = new double[EVEN.cellCount()];
                Arrays.setAll(
                        cells,
                        cell -> head.applyAsDouble(
                                (EVEN.centreX(cell) - 2000) / 100, (EVEN.centreY(cell) - 1850) / 100));
                double exact = head.applyAsDouble((px - 2000) / 100, (py - 1850) / 100);
                assertEquals(exact, field.weights().of(cells), 1e-3);
            }
        }
    }

    /** Reciprocity of flow: what the grid leaves of A at B it leaves of B at A, here found from either side. */
    @Test
    void eitherOfTwoPlacesLeavesTheSameAtTheOther() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        double unit = 1 / (2 * Math.PI * 150);
        Random random = new Random(6);
        for (int draw = 0; draw < 50; draw++) {
            NearField one = NearField.at(
                    aquifer, List.of(), 2000 + 100 * random.nextDouble(), 1800 + 100 * random.nextDouble(), 0.1);
            NearField other = NearField.at(
                    aquifer, List.of(), 1700 + 600 * random.nextDouble(), 1700 + 400 * random.nextDouble(), 0.1);
            assertEquals(one.unresolvedFrom(other), other.unresolvedFrom(one), 1e-4 * unit);
        }
    }

    @Test
    void aBoreOnAnEdgeOrACornerIsSeenLikeOneBesideIt() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        for (double[] place : new double[][] {{2000, 1850}, {2000, 1800}, {2050, 1800}}) {
            double onEdge =
                    NearField.at(aquifer, List.of(), place[0], place[1], 0.1).unresolvedAtWall();
            double beside = NearField.at(aquifer, List.of(), place[0] + 0.1, place[1] + 0.1, 0.1)
                    .unresolvedAtWall();
            assertEquals(beside, onEdge, 0.002 * beside);
        }
    }

    /** Behind a strip two cells wide the image of a bore stands at the centre of a cell of the aquifer. */
    @Test
    void anImageAtACentreIsLikeOneBesideIt() {
        Aquifer plain = Aquifer.homogeneous(EVEN, 150, 1e-4);
        boolean[] active = plain.active().clone();
        for (int row = 8; row < 29; row++) {
            active[EVEN.cell(7, row)] = false;
            active[EVEN.cell(8, row)] = false;
        }
        Aquifer aquifer = new Aquifer(
                EVEN,
                plain.transmissivityX(),
                plain.transmissivityY(),
                plain.storativity(),
                plain.top(),
                plain.bottom(),
                active);
        double[] atCentre = steadyHead(aquifer, 450, 1850);
        double[] beside = steadyHead(aquifer, 450.001, 1850.001);
        for (int cell = 0; cell < atCentre.length; cell++) {
            if (active[cell]) {
                assertEquals(beside[cell], atCentre[cell], 1e-3, "cell " + cell);
            }
        }
    }

    /** Head in each cell beside a bore of 500 m³/d, with head held at the north (m). */
    private static double[] steadyHead(Aquifer aquifer, double x, double y) {
        OuterBoundary north =
                new OuterBoundary.FixedHead("north", SideSegment.whole(Side.NORTH, EVEN), Schedule.constant(100));
        Bore bore = new Bore(
                "bore",
                x,
                y,
                0.1,
                WellLoss.NONE,
                List.of(new OperatingPhase(
                        0, new Operation.PumpedRate(Schedule.constant(500), OptionalDouble.empty()))));
        FlowProblem problem =
                new FlowProblem(aquifer, Optional.empty(), List.of(north), List.of(), List.of(), List.of(bore));
        try (Simulation simulation = new Simulation(problem, new Settings(1e-4, Double.POSITIVE_INFINITY, 1))) {
            return simulation.steadyHead(0);
        }
    }

    @Test
    void tooWideABoreAndAPlaceOutsideAreRefused() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        Bore wide = new Bore("wide", 2050, 1850, 40, WellLoss.NONE, List.of());
        NearField field = NearField.at(aquifer, List.of(), 2050, 1850, 40);
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> UnresolvedDrawdown.between(List.of(wide), List.of(field)));
        assertTrue(refused.getMessage().contains("wide") && refused.getMessage().contains("40"));
        assertThrows(IllegalArgumentException.class, () -> NearField.at(aquifer, List.of(), -1, 5, 0));
    }

    /** Bores close together where T jumps wildly: the matrix of the rules stays one of a convex problem. */
    @Test
    void drawdownBetweenBoresIsSymmetricAndPositiveDefinite() {
        RectilinearGrid fine = new RectilinearGrid(Axis.uniform(0, 5, 41), Axis.uniform(0, 5, 37));
        for (int draw = 0; draw < 20; draw++) {
            Random random = new Random(draw);
            Aquifer plain = Aquifer.homogeneous(fine, 1, 1e-4);
            double[] t = new double[fine.cellCount()];
            Arrays.setAll(t, cell -> 100 * Math.exp(1.7 * random.nextGaussian()));
            Aquifer aquifer = new Aquifer(fine, t, t, plain.storativity(), plain.top(), plain.bottom(), plain.active());
            List<Bore> bores = random.doubles(30)
                    .mapToObj(u -> new Bore(
                            "bore " + u, 90 + 20 * u, 85 + 20 * random.nextDouble(), 0.1, WellLoss.NONE, List.of()))
                    .toList();
            List<NearField> fields = bores.stream()
                    .map(bore -> NearField.at(aquifer, List.of(), bore.x(), bore.y(), 0.1))
                    .toList();
            UnresolvedDrawdown drawdown = UnresolvedDrawdown.between(bores, fields);
            double[] discharge = random.doubles(30, -1, 1).toArray();
            double work = 0;
            for (int i = 0; i < 30; i++) {
                for (int j = 0; j < 30; j++) {
                    assertEquals(drawdown.perDischarge(i, j), drawdown.perDischarge(j, i));
                    work += discharge[i] * drawdown.perDischarge(i, j) * discharge[j];
                }
            }
            assertTrue(work > 0);
        }
    }

    /**
     * Two bores on either side of a jump of T contradict each other; two others in the same field, far off, are as they are
     * alone. The change stays within what the estimates differ by, and own drawdown is not touched.
     */
    @Test
    void onlyBoresThatContradictEachOtherAreApproximate() {
        RectilinearGrid fine = new RectilinearGrid(Axis.uniform(0, 20, 61), Axis.uniform(0, 20, 37));
        Aquifer plain = Aquifer.homogeneous(fine, 1, 1e-4);
        double[] t = new double[fine.cellCount()];
        Arrays.setAll(t, cell -> fine.column(cell) < 15 ? 1 : 1000);
        Aquifer aquifer = new Aquifer(fine, t, t, plain.storativity(), plain.top(), plain.bottom(), plain.active());
        double[] eastings = {299.9, 300.1, 1000, 1010};
        List<Bore> bores = Arrays.stream(eastings)
                .mapToObj(x -> new Bore("bore at " + x, x, 370, 0.1, WellLoss.NONE, List.of()))
                .toList();
        List<NearField> fields = bores.stream()
                .map(bore -> NearField.at(aquifer, List.of(), bore.x(), bore.y(), 0.1))
                .toList();
        UnresolvedDrawdown all = UnresolvedDrawdown.between(bores, fields);
        UnresolvedDrawdown others = UnresolvedDrawdown.between(bores.subList(2, 4), fields.subList(2, 4));
        assertEquals(others.perDischarge(1, 0), all.perDischarge(3, 2), 0);
        assertEquals(List.of(), others.approximations());
        assertEquals(1, all.approximations().size());
        UnresolvedDrawdown.Approximation one = all.approximations().get(0);
        assertEquals(List.of(1, 0), List.of(one.bore(), one.other()));
        for (int i = 0; i < 4; i++) {
            assertEquals(fields.get(i).unresolvedAtWall(), all.perDischarge(i, i));
        }
        double there = fields.get(0).unresolvedFrom(fields.get(1));
        double back = fields.get(1).unresolvedFrom(fields.get(0));
        assertEquals(0.5 * (there + back), one.estimated(), 1e-15);
        assertEquals(one.taken(), all.perDischarge(0, 1));
        assertTrue(Math.abs(one.taken() - one.estimated()) <= 0.5 * Math.abs(there - back), one::toString);
    }

    /** Higham (2002), example of section 4 (values from memory): found with a floor of zero, here a thousandth above. */
    @Test
    void theNearestMatrixIsTheOneOfHigham() {
        DMatrixRMaj given = new DMatrixRMaj(new double[][] {{1, 1, 0}, {1, 1, 1}, {0, 1, 1}});
        DMatrixRMaj nearest = NearestCorrelation.to(given);
        assertEquals(0.7607, nearest.get(0, 1), 1e-3);
        assertEquals(0.1573, nearest.get(0, 2), 1e-3);
        assertEquals(0.7607, nearest.get(1, 2), 1e-3);
        assertEquals(1, nearest.get(2, 2), 0);
    }

    /** Cells up to 50 times longer than wide: a bore of half a metre still fits, wherever it stands. */
    @Test
    void boresFitIntoLongCells() {
        Random random = new Random(8);
        for (double aspect : new double[] {1, 2, 4, 6, 8, 16, 50}) {
            RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 20 * aspect, 41), Axis.uniform(0, 20, 41));
            Aquifer aquifer = Aquifer.homogeneous(grid, 150, 1e-4);
            for (int draw = 0; draw < 20; draw++) {
                double x = 20 * aspect * (20 + random.nextDouble());
                double y = 20 * (20 + random.nextDouble());
                assertTrue(NearField.at(aquifer, List.of(), x, y, 0.5).unresolvedAtWall() > 0, "aspect " + aspect);
            }
        }
    }

    /** Fields of second degree, sampled at the centres, are seen as they are, and so are those at the rim of first. */
    @Test
    void headBetweenTheCentresIsThatOfTheParabolas() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        List<DoubleBinaryOperator> heads = List.of(
                (x, y) -> 3, (x, y) -> x, (x, y) -> y, (x, y) -> x * y, (x, y) -> x * x + y, (x, y) -> x - 2 * y * y);
        Random random = new Random(9);
        for (DoubleBinaryOperator head : heads) {
            double[] cells = new double[EVEN.cellCount()];
            Arrays.setAll(cells, cell -> head.applyAsDouble(EVEN.centreX(cell) / 100, EVEN.centreY(cell) / 100));
            for (int draw = 0; draw < 20; draw++) {
                double x = 100 + 3900 * random.nextDouble();
                double y = 100 + 3500 * random.nextDouble();
                ObservedHead observed = new ObservedHead(aquifer, x, y, List.of());
                assertEquals(1, sum(observed.weights()), 1e-12);
                assertEquals(head.applyAsDouble(x / 100, y / 100), observed.at(cells, new double[0]), 1e-9);
            }
        }
        double[] slope = new double[EVEN.cellCount()];
        Arrays.setAll(slope, cell -> EVEN.centreX(cell) + 2 * EVEN.centreY(cell));
        assertEquals(40, new ObservedHead(aquifer, 4, 18, List.of()).at(slope, new double[0]), 1e-9);
    }

    /** Flow across a jump of T: head bends at the face and runs straight on either side. */
    @Test
    void headBendsWhereTransmissivityJumps() {
        Aquifer plain = Aquifer.homogeneous(EVEN, 150, 1e-4);
        double[] t = new double[EVEN.cellCount()];
        Arrays.setAll(t, cell -> EVEN.centreX(cell) < 2000 ? 50 : 500);
        Aquifer aquifer = new Aquifer(EVEN, t, t, plain.storativity(), plain.top(), plain.bottom(), plain.active());
        DoubleBinaryOperator head = (x, y) -> (x - 2000) / (x < 2000 ? 50 : 500);
        double[] cells = new double[EVEN.cellCount()];
        Arrays.setAll(cells, cell -> head.applyAsDouble(EVEN.centreX(cell), EVEN.centreY(cell)));
        for (double x : new double[] {1910, 1950, 1999, 2001, 2050, 2090}) {
            ObservedHead observed = new ObservedHead(aquifer, x, 1820, List.of());
            assertEquals(head.applyAsDouble(x, 1820), observed.at(cells, new double[0]), 1e-9);
        }
    }

    /** The logarithm around a bore is seen as it is at points around it, also within its cell. */
    @Test
    void aPointNearABoreIsSeenAtItsDistance() {
        Aquifer aquifer = Aquifer.homogeneous(EVEN, 150, 1e-4);
        NearField bore = NearField.at(aquifer, List.of(), 2013, 1871, 0.1);
        double[] cells = new double[EVEN.cellCount()];
        double unit = 1 / (2 * Math.PI * 150);
        LogarithmicDrawdown around = new LogarithmicDrawdown(2013, 1871, 150, 150);
        MirrorSides none = new MirrorSides(aquifer, List.of(), bore.cell(), around, 0);
        CellDrawdown onCells = new CellDrawdown(aquifer, bore.cell(), new MirroredDrawdown(around, none), none);
        Arrays.setAll(cells, cell -> -onCells.in(cell));
        for (double[] place : new double[][] {{2014, 1871}, {2040, 1880}, {2150, 1750}, {1800, 1900}}) {
            ObservedHead observed = new ObservedHead(aquifer, place[0], place[1], List.of(bore));
            double distance = Math.hypot(place[0] - 2013, place[1] - 1871);
            assertEquals(unit * Math.log(distance), observed.at(cells, new double[] {1}), 1e-12);
        }
    }
}

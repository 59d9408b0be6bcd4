package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The reference is the simulation, which solves forward for a bore that stands in the cell, with and without it, springs
 * and a free-flowing bore following their rules in both.
 */
class EffectFieldsTest {

    private static final double RATE = 200;
    private static final double[] DAYS = {20, 365, 3650};
    private static final long SEED = 11;
    private static final double[] POINT = {9_400, 6_600};

    static Stream<FlowProblem> problems() {
        FlowProblem field = InterferenceTest.field();
        Aquifer aquifer = smooth(field.aquifer());
        List<Spring> springs = List.of(new Spring("spring", 8_300, 9_100, InterferenceTest.START_HEAD - 8, 40));
        List<Bore> watching = List.of(bore("watched", 10_130, 7_310, List.of()));
        Operation flows = new Operation.FreeFlow(InterferenceTest.START_HEAD - 10);
        List<Bore> flowing = new ArrayList<>(watching);
        flowing.add(bore("flowing", 12_900, 5_200, List.of(new OperatingPhase(0, flows))));
        return Stream.of(
                new FlowProblem(aquifer, field.sealingBed(), field.boundaries(), List.of(), List.of(), watching),
                new FlowProblem(aquifer, Optional.empty(), field.boundaries(), List.of(), springs, flowing));
    }

    /** T from 100 to 400 m²/d within 8 km, twice as large along x as along y. */
    static Aquifer smooth(Aquifer like) {
        RectilinearGrid grid = like.grid();
        double[] tx = new double[grid.cellCount()];
        Arrays.setAll(
                tx,
                cell -> 200
                        * Math.exp(0.7 * Math.sin(grid.centreX(cell) / 2500) * Math.cos(grid.centreY(cell) / 2500)));
        double[] ty = Arrays.stream(tx).map(t -> t / 2).toArray();
        return new Aquifer(grid, tx, ty, like.storativity(), like.top(), like.bottom(), like.active());
    }

    private static Bore bore(String name, double x, double y, List<OperatingPhase> phases) {
        return new Bore(name, x, y, 0.1, new WellLoss(2e-3, 0), phases);
    }

    private static ObservedHead point(FlowProblem problem) {
        return new ObservedHead(problem.aquifer(), POINT[0], POINT[1], problem.nearFields());
    }

    /** Heads of the bores, springs and the point on the days, and discharges on the last. */
    @SuppressWarnings("ArrayRecordComponent") // read within one test, never compared
    private record Heads(double[][] onDays, double[] lastDischarge) {}

    private static Heads simulate(FlowProblem problem, int kept) {
        ObservedHead point = point(problem);
        double[] start = InterferenceTest.level(problem.aquifer().grid().cellCount(), InterferenceTest.START_HEAD);
        double[][] heads = new double[DAYS.length][];
        double[][] last = new double[1][];
        try (Simulation simulation = new Simulation(problem, new Settings(1e-6, Double.POSITIVE_INFINITY, 1))) {
            int[] record = {0};
            simulation.run(start, 0, DAYS[DAYS.length - 1], DAYS, state -> {
                List<Double> values = new ArrayList<>();
                for (int bore = 0; bore < kept; bore++) {
                    values.add(state.boreWallHead()[bore]);
                }
                for (double head : state.springHead()) {
                    values.add(head);
                }
                values.add(point.at(state.head(), state.boreRate()));
                heads[record[0]++] =
                        values.stream().mapToDouble(Double::doubleValue).toArray();
                last[0] = DoubleStream.concat(Arrays.stream(state.boreRate()), Arrays.stream(state.springDischarge()))
                        .toArray();
            });
        }
        return new Heads(heads, last[0]);
    }

    private static EffectFields.Receptor receptor(FlowProblem problem, int station) {
        int bores = problem.bores().size();
        if (station < bores) {
            Bore bore = problem.bores().get(station);
            return EffectFields.Receptor.at(station, problem.nearField(bore.x(), bore.y(), 0.1));
        }
        if (station < bores + problem.springs().size()) {
            Spring spring = problem.springs().get(station - bores);
            return EffectFields.Receptor.spring(
                    station, problem.aquifer().grid().locate(spring.x(), spring.y()));
        }
        return EffectFields.Receptor.at(station, point(problem));
    }

    /** Within 1 % or 1 mm at every place, for a bore in each of 20 cells; half of that is found. */
    @ParameterizedTest
    @MethodSource("problems")
    void agreeWithTheSimulation(FlowProblem problem) {
        RectilinearGrid grid = problem.aquifer().grid();
        int bores = problem.bores().size();
        Heads without = simulate(problem, bores);
        HeadDependence dependence = HeadDependence.of(problem, DAYS[DAYS.length - 1], without.lastDischarge());
        assertEquals(problem.springs().size() + bores - 1, dependence.points().size(), "what gives back");
        List<EffectFields.Receptor> receptors = new ArrayList<>();
        int count = bores + problem.springs().size() + 1;
        for (int i = 0; i < count; i++) {
            receptors.add(receptor(problem, i));
        }
        EffectFields fields = new EffectFields(
                problem,
                dependence,
                List.of(point(problem)),
                receptors,
                new EffectFields.NewBore(0.1, DAYS[0], DAYS[DAYS.length - 1]),
                1);
        Random random = new Random(SEED);
        for (int trial = 0; trial < 20; trial++) {
            int cell = random.nextInt(grid.cellCount());
            List<Bore> more = new ArrayList<>(problem.bores());
            Operation pumped = new Operation.PumpedRate(Schedule.constant(RATE), OptionalDouble.empty());
            more.add(bore("new", grid.centreX(cell), grid.centreY(cell), List.of(new OperatingPhase(0, pumped))));
            Heads with = simulate(problem.withBores(more), bores);
            for (int day = 0; day < DAYS.length; day++) {
                for (int receptor = 0; receptor < count; receptor++) {
                    double simulated = without.onDays()[day][receptor] - with.onDays()[day][receptor];
                    double predicted = RATE * fields.after(receptor, DAYS[day])[cell];
                    assertEquals(
                            simulated,
                            predicted,
                            Math.max(1e-3, 0.01 * simulated),
                            "receptor " + receptor + ", cell " + cell + ", day " + DAYS[day]);
                }
            }
        }
    }

    /** Where ln T has a deviation of 0.7 from cell to cell, by the near field of the bore itself: within 0.5 % or 1 mm. */
    @Test
    void agreeWithTheSimulationByTheNearFieldOfOneBore() {
        FlowProblem smooth = problems().findFirst().orElseThrow();
        Random random = new Random(SEED);
        Aquifer like = smooth.aquifer();
        double[] rough = Arrays.stream(like.transmissivityX())
                .map(t -> 200 * Math.exp(0.7 * random.nextGaussian()))
                .toArray();
        FlowProblem problem = new FlowProblem(
                new Aquifer(like.grid(), rough, rough, like.storativity(), like.top(), like.bottom(), like.active()),
                smooth.sealingBed(),
                smooth.boundaries(),
                List.of(),
                List.of(),
                smooth.bores());
        EffectFields fields = new EffectFields(
                problem,
                HeadDependence.none(),
                List.of(point(problem)),
                List.of(receptor(problem, 0), receptor(problem, 1)),
                new EffectFields.NewBore(0.1, DAYS[0], DAYS[DAYS.length - 1]),
                1);
        Heads without = simulate(problem, 1);
        double errors = 0;
        double errorsByCells = 0;
        for (int trial = 0; trial < 8; trial++) {
            int cell = random.nextInt(rough.length);
            RectilinearGrid grid = like.grid();
            List<Bore> more = new ArrayList<>(problem.bores());
            Operation pumped = new Operation.PumpedRate(Schedule.constant(RATE), OptionalDouble.empty());
            more.add(bore("new", grid.centreX(cell), grid.centreY(cell), List.of(new OperatingPhase(0, pumped))));
            Heads with = simulate(problem.withBores(more), 1);
            NearField field = problem.nearField(grid.centreX(cell), grid.centreY(cell), 0.1);
            for (int day = 0; day < DAYS.length; day++) {
                for (int receptor = 0; receptor < 2; receptor++) {
                    double simulated = without.onDays()[day][receptor] - with.onDays()[day][receptor];
                    double predicted = RATE * fields.by(receptor, field, DAYS[day]);
                    assertEquals(
                            simulated,
                            predicted,
                            Math.max(1e-3, 0.005 * simulated),
                            "receptor " + receptor + ", cell " + cell + ", day " + DAYS[day]);
                    double byCell = RATE * fields.after(receptor, DAYS[day])[cell];
                    errors += Math.abs(predicted - simulated);
                    errorsByCells += Math.abs(byCell - simulated);
                }
            }
        }
        assertTrue(errors < 0.5 * errorsByCells, "errors " + errors + ", of cells " + errorsByCells);
    }
}

package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Sums of an attribution in random fields: boundaries and recharge that change, springs, free-flowing bores, pumped bores with
 * rates at random; from rest where the seed is even, from level heads that are far from rest where it is odd.
 */
class AttributionPropertiesTest {

    private static final double END = 1096;
    private static final double[] DAYS = {150, 640, END};
    private static final double[] YEARS = {0, 365.25, 730.5, END};
    private static final double LEVEL = 118;
    private static final int PUMPED = 3;
    private static final int FLOWING = 2;
    private static final int SPRINGS = 2;

    private static FlowProblem field(Random random) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 1000, 20), Axis.uniform(0, 1000, 20));
        int cells = grid.cellCount();
        double[] t = new double[cells];
        Arrays.setAll(t, cell -> 250 * Math.exp(0.5 * random.nextGaussian()));
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid,
                t,
                t,
                InterferenceTest.level(cells, 3e-4),
                InterferenceTest.level(cells, 0),
                InterferenceTest.level(cells, -50),
                active);
        SealingBed bed = new SealingBed(
                InterferenceTest.level(cells, 60),
                InterferenceTest.level(cells, 2e-6),
                InterferenceTest.level(cells, 3e-6),
                InterferenceTest.level(cells, 110));
        OuterBoundary west = new OuterBoundary.FixedHead(
                "west",
                SideSegment.whole(Side.WEST, grid),
                new LinearSchedule(
                        new double[] {0, 500, 2000}, new double[] {125, 125 - 4 * random.nextDouble(), 124}));
        double[] rain = new double[cells];
        Arrays.fill(rain, 0, cells / 10, 2e-4);
        Recharge recharge = new Recharge(
                "rain", rain, new StepSchedule(new double[] {0, 365}, new double[] {1, random.nextDouble()}));
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < PUMPED; i++) {
            double[] rates = random.doubles(4, 0, 900).toArray();
            bores.add(bore(
                    i,
                    random,
                    new OperatingPhase(
                            0,
                            new Operation.PumpedRate(
                                    new StepSchedule(new double[] {0, 180, 365, 700}, rates),
                                    OptionalDouble.empty()))));
        }
        for (int i = 0; i < FLOWING; i++) {
            bores.add(bore(
                    PUMPED + i, random, new OperatingPhase(-1, new Operation.FreeFlow(102 + 4 * random.nextDouble()))));
        }
        List<Spring> springs = new ArrayList<>();
        for (int i = 0; i < SPRINGS; i++) {
            springs.add(new Spring(
                    "spring " + i,
                    place(random),
                    place(random),
                    104 + 4 * random.nextDouble(),
                    50 + 100 * random.nextDouble()));
        }
        return new FlowProblem(aquifer, Optional.of(bed), List.of(west), List.of(recharge), springs, bores);
    }

    private static Bore bore(int number, Random random, OperatingPhase phase) {
        return new Bore("bore " + number, place(random), place(random), 0.1, new WellLoss(0, 1e-6), List.of(phase));
    }

    private static double place(Random random) {
        return 3_000 + 14_000 * random.nextDouble();
    }

    private static SuperposedRun run(FlowProblem problem, StationResponses responses, boolean fromRest) {
        FlowProblem atRest = problem.withBores(problem.bores().stream()
                .map(bore -> bore.operationAt(-0.5) instanceof Operation.FreeFlow ? bore : bore.withPhases(List.of()))
                .toList());
        SuperposedRun run = fromRest
                ? SuperposedRun.fromSteady(problem, atRest, responses, 1e-3)
                : SuperposedRun.fromGiven(problem, responses, 1e-3);
        run.run(DAYS, END);
        return run;
    }

    /** Bores and what is under way without them add up to drawdown within 1 mm and to loss of discharge within 0.2 %. */
    @ParameterizedTest
    @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7})
    void partsAddUp(long seed) {
        FlowProblem problem = field(new Random(seed));
        boolean fromRest = seed % 2 == 0;
        double[] heads = InterferenceTest.level(problem.aquifer().grid().cellCount(), LEVEL);
        StationResponses responses = fromRest
                ? StationResponses.fromSteady(problem, List.of(), END, new Settings(1e-4, Double.POSITIVE_INFINITY, 1))
                : StationResponses.fromGiven(problem, List.of(), heads, END, 1);
        SuperposedRun run = run(problem, responses, fromRest);
        SuperposedState start = run.states().get(0);
        Attribution.Split[] splits =
                new Attribution(problem, responses, run.history(), start.discharge(), fromRest, YEARS).on(DAYS);
        double largestDrift = 0;
        int followed = 0;
        for (int k = 0; k < DAYS.length; k++) {
            SuperposedState now = run.states().get(k + 1);
            for (int receptor = 0; receptor < PUMPED + FLOWING + SPRINGS; receptor++) {
                String where = "seed " + seed + " day " + DAYS[k] + " at " + receptor;
                double drift = splits[k].driftDrawdown()[receptor];
                double sum =
                        drift + Arrays.stream(splits[k].drawdown()[receptor]).sum();
                assertEquals(start.head()[receptor] - now.head()[receptor], sum, 1e-3, where);
                largestDrift = Math.max(largestDrift, Math.abs(drift));
                if (receptor >= PUMPED && splits[k].followed()[receptor]) {
                    double loss = start.discharge()[receptor] - now.discharge()[receptor];
                    double parts = splits[k].driftLoss()[receptor]
                            + Arrays.stream(splits[k].loss()[receptor]).sum();
                    assertEquals(loss, parts, 0.2 + 2e-3 * Math.abs(loss), where);
                    followed++;
                }
            }
        }
        assertTrue(largestDrift > 0.1, "boundaries move heads by " + largestDrift);
        assertTrue(followed >= DAYS.length, "points that follow head: " + followed);
    }
}

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
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What follows from the flow equation being linear, whatever its numbers. */
class ResponsePropertiesTest {

    private static final double END = 1000;
    private static final double[] DAYS = {1, 30, 200, 365, 700, END};
    private static final Settings SETTINGS = new Settings(1e-4, Double.POSITIVE_INFINITY, 1);

    private static FlowProblem field() {
        FlowProblem like = InterferenceTest.field();
        return new FlowProblem(
                like.aquifer(), like.sealingBed(), like.boundaries(), List.of(), List.of(), like.bores());
    }

    private static Operation steps(double[] rates) {
        return new Operation.PumpedRate(new StepSchedule(new double[] {0, 100, 400}, rates), OptionalDouble.empty());
    }

    /** The bores of a field with rates in three stretches; no phases where there are no rates. */
    private static FlowProblem with(FlowProblem problem, double[][] rates) {
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < problem.bores().size(); i++) {
            List<OperatingPhase> phases =
                    rates[i].length == 0 ? List.of() : List.of(new OperatingPhase(0, steps(rates[i])));
            bores.add(problem.bores().get(i).withPhases(phases));
        }
        return problem.withBores(bores);
    }

    private static double[][] drawdowns(FlowProblem problem, StationResponses responses) {
        FlowProblem atRest = with(problem, new double[problem.bores().size()][0]);
        SuperposedRun run = SuperposedRun.fromSteady(problem, atRest, responses, 1e-3);
        run.run(DAYS, END);
        double[] start = run.states().get(0).head();
        return run.states().stream()
                .skip(1)
                .map(state -> {
                    double[] drawdown = state.head();
                    Arrays.setAll(drawdown, i -> start[i] - drawdown[i]);
                    return drawdown;
                })
                .toArray(double[][]::new);
    }

    private static double[][] rates(Random random, int bores) {
        double[][] rates = new double[bores][3];
        for (double[] own : rates) {
            Arrays.setAll(own, i -> 3000 * random.nextDouble());
        }
        return rates;
    }

    /** Drawdowns of bores one by one add up to that of all, and a multiple of all rates draws down as many times as much. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void drawdownsAddUpAndGrowWithTheRates(long seed) {
        Random random = new Random(seed);
        FlowProblem problem = field();
        int bores = problem.bores().size();
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        double[][] rates = rates(random, bores);
        double[][] together = drawdowns(with(problem, rates), responses);
        double factor = 0.1 + 3 * random.nextDouble();
        double[][] multiplied = Arrays.stream(rates)
                .map(own -> Arrays.stream(own).map(rate -> factor * rate).toArray())
                .toArray(double[][]::new);
        double[][] grown = drawdowns(with(problem, multiplied), responses);
        double[][] sum = new double[DAYS.length][bores];
        for (int bore = 0; bore < bores; bore++) {
            double[][] alone = new double[bores][0];
            alone[bore] = rates[bore];
            double[][] one = drawdowns(with(problem, alone), responses);
            for (int day = 0; day < DAYS.length; day++) {
                for (int i = 0; i < bores; i++) {
                    sum[day][i] += one[day][i];
                }
            }
        }
        for (int day = 0; day < DAYS.length; day++) {
            for (int i = 0; i < bores; i++) {
                assertTrue(together[day][i] > 0.1, "seed " + seed);
                assertEquals(together[day][i], sum[day][i], 1e-9 * together[day][i], "sum, seed " + seed);
                assertEquals(factor * together[day][i], grown[day][i], 1e-9 * grown[day][i], "multiple, seed " + seed);
            }
        }
    }

    /** With T, storativity, and conductivity and storage of the bed twice as large, responses are half as large. */
    @Test
    void responsesAreInverseToTheSizeOfAllCoefficients() {
        FlowProblem problem = field();
        Aquifer like = problem.aquifer();
        SealingBed bed = problem.sealingBed().orElseThrow();
        FlowProblem twice = new FlowProblem(
                new Aquifer(
                        like.grid(),
                        doubled(like.transmissivityX()),
                        doubled(like.transmissivityY()),
                        doubled(like.storativity()),
                        like.top(),
                        like.bottom(),
                        like.active()),
                Optional.of(new SealingBed(
                        bed.thickness(),
                        doubled(bed.verticalConductivity()),
                        doubled(bed.specificStorage()),
                        bed.headAbove())),
                problem.boundaries(),
                List.of(),
                List.of(),
                problem.bores());
        UnitResponses one = UnitResponses.of(problem, List.of(), END, 1);
        UnitResponses half = UnitResponses.of(twice, List.of(), END, 1);
        for (double day : DAYS) {
            for (int receptor = 0; receptor < one.receptors(); receptor++) {
                for (int cause = 0; cause < one.causes(); cause++) {
                    double expected = one.at(receptor, cause, day) / 2;
                    double own = one.at(cause, cause, day) / 2;
                    assertEquals(expected, half.at(receptor, cause, day), 1e-7 * own, receptor + ", " + cause);
                }
            }
        }
    }

    private static double[] doubled(double[] values) {
        return Arrays.stream(values).map(value -> 2 * value).toArray();
    }
}

package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;

/**
 * On a field whose boundaries and recharge stay as they are, so that bores explain all. The reference is the run itself, and
 * runs with one bore alone.
 */
class AttributionTest {

    private static final double END = 1461;
    private static final double[] DAYS = {200, 800, END};
    private static final double[] YEARS = {0, 365.25, 730.5, 1095.75, END};
    private static final Settings SETTINGS = new Settings(1e-4, Double.POSITIVE_INFINITY, 1);

    private static Operation seasonal() {
        double[] days = new double[8];
        double[] rates = new double[8];
        Arrays.setAll(days, i -> i % 2 == 0 ? 365.25 * i / 2 : 365.25 * (i - 1) / 2 + 182);
        Arrays.setAll(rates, i -> i % 2 == 0 ? 900 : 300);
        return new Operation.PumpedRate(new StepSchedule(days, rates), OptionalDouble.empty());
    }

    /** Two pumped bores and one that flows, and the spring. */
    private static FlowProblem field(boolean flowing, int... pumped) {
        FlowProblem changing = StationResponsesTest.field(seasonal(), StationResponsesTest.pumped(700), flowing());
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            int place = i;
            boolean on = Arrays.stream(pumped).anyMatch(k -> k == place);
            bores.add(on ? changing.bores().get(i) : changing.bores().get(i).withPhases(List.of()));
        }
        Bore third = changing.bores().get(2);
        bores.add(flowing ? third.withPhases(List.of(new OperatingPhase(-1, flowing()))) : third.withPhases(List.of()));
        return new FlowProblem(
                changing.aquifer(),
                changing.sealingBed(),
                List.of(new OuterBoundary.FixedHead(
                        "west", changing.boundaries().get(0).segment(), Schedule.constant(120))),
                List.of(),
                changing.springs(),
                bores);
    }

    private static Operation flowing() {
        return new Operation.FreeFlow(104);
    }

    private static SuperposedRun run(FlowProblem problem, StationResponses responses) {
        FlowProblem atRest = problem.withBores(problem.bores().stream()
                .map(bore -> bore.operationAt(-0.5) instanceof Operation.FreeFlow ? bore : bore.withPhases(List.of()))
                .toList());
        SuperposedRun run = SuperposedRun.fromSteady(problem, atRest, responses, 1e-3);
        run.run(DAYS, END);
        return run;
    }

    private static Attribution.Split[] split(FlowProblem problem, StationResponses responses, SuperposedRun run) {
        return new Attribution(
                        problem, responses, run.history(), run.states().get(0).discharge(), true, YEARS)
                .on(DAYS);
    }

    /** Sums over the bores are the drawdown and the loss of discharge of the run, though the flowing bore's rule is bent. */
    @Test
    void partsAddUpToTheRun() {
        FlowProblem problem = field(true, 0, 1);
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        SuperposedRun run = run(problem, responses);
        Attribution.Split[] splits = split(problem, responses, run);
        SuperposedState start = run.states().get(0);
        for (int k = 0; k < DAYS.length; k++) {
            SuperposedState state = run.states().get(k + 1);
            for (int receptor = 0; receptor < 4; receptor++) {
                double drawdown = start.head()[receptor] - state.head()[receptor];
                assertEquals(
                        drawdown, Arrays.stream(splits[k].drawdown()[receptor]).sum(), 1e-3, "at " + receptor);
            }
            for (int point = 2; point < 4; point++) {
                double loss = start.discharge()[point] - state.discharge()[point];
                assertTrue(loss > 10, "loss " + loss);
                assertEquals(loss, Arrays.stream(splits[k].loss()[point]).sum(), 2e-3 * loss, "of " + point);
                assertTrue(splits[k].followed()[point]);
            }
        }
    }

    /** With straight rules alone, what is put down to a bore is what the run with this bore alone shows. */
    @Test
    void eachPartIsWhatTheBoreAloneDoes() {
        FlowProblem both = field(false, 0, 1);
        StationResponses responses = StationResponses.fromSteady(both, List.of(), END, SETTINGS);
        Attribution.Split[] splits = split(both, responses, run(both, responses));
        for (int bore = 0; bore < 2; bore++) {
            SuperposedRun alone = run(field(false, bore), responses);
            SuperposedState start = alone.states().get(0);
            for (int k = 0; k < DAYS.length; k++) {
                SuperposedState state = alone.states().get(k + 1);
                for (int receptor = 0; receptor < 4; receptor++) {
                    double drawdown = start.head()[receptor] - state.head()[receptor];
                    assertEquals(drawdown, splits[k].drawdown()[receptor][bore], 1e-3);
                }
                double loss = start.discharge()[3] - state.discharge()[3];
                assertEquals(loss, splits[k].loss()[3][bore], 2e-3 * loss);
            }
        }
    }

    /** A bore without seasons has no seasonal part; that of the other is what its rate does beyond that of its mean. */
    @Test
    void seasonsAreToldFromTheYear() {
        FlowProblem problem = field(false, 0, 1);
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        Attribution.Split[] splits = split(problem, responses, run(problem, responses));
        double year = (900 * 182 + 300 * 183.25) / 365.25;
        assertEquals(0, splits[0].seasonalDrawdown()[0][1], 1e-9);
        double high = splits[0].seasonalDrawdown()[0][0];
        double all = splits[0].drawdown()[0][0];
        // Day 200 is 18 days after the change to less than the mean: below it, but not by all of its response.
        assertTrue(high < 0 && high > -(year - 300) * responses.responses().at(0, 0, 200), "seasonal " + high);
        assertTrue(all > 0);
        assertEquals(0, splits[0].seasonalLoss()[3][1], 1e-9);
        List<Bore> even = new ArrayList<>(problem.bores());
        even.set(0, even.get(0).withPhases(List.of(new OperatingPhase(0, StationResponsesTest.pumped(year)))));
        SuperposedRun withSeasons = run(problem, responses);
        SuperposedRun without = run(problem.withBores(even), responses);
        for (int k = 0; k < DAYS.length; k++) {
            double more = without.states().get(k + 1).discharge()[3]
                    - withSeasons.states().get(k + 1).discharge()[3];
            assertTrue(Math.abs(more) > 1, "the season shows at the spring");
            assertEquals(more, splits[k].seasonalLoss()[3][0], 0.1, "of the spring");
        }
    }

    /** The part of boundaries and recharge is what the run without any bore shows, the spring's loss included. */
    @Test
    void whatNoBoreDoesIsTheRunWithoutBores() {
        FlowProblem taking = StationResponsesTest.field(seasonal(), StationResponsesTest.pumped(300));
        FlowProblem idle = taking.withBores(
                taking.bores().stream().map(bore -> bore.withPhases(List.of())).toList());
        StationResponses responses = StationResponses.fromSteady(taking, List.of(), END, SETTINGS);
        Attribution.Split[] splits = split(taking, responses, run(taking, responses));
        SuperposedRun alone = run(idle, responses);
        SuperposedState start = alone.states().get(0);
        for (int k = 0; k < DAYS.length; k++) {
            SuperposedState state = alone.states().get(k + 1);
            assertTrue(splits[k].followed()[2]);
            assertTrue(state.discharge()[2] > 0, "the spring flows");
            for (int receptor = 0; receptor < 3; receptor++) {
                double drawdown = start.head()[receptor] - state.head()[receptor];
                assertEquals(drawdown, splits[k].driftDrawdown()[receptor], 1e-3, "at " + receptor);
            }
            double loss = start.discharge()[2] - state.discharge()[2];
            assertEquals(loss, splits[k].driftLoss()[2], 0.1 + 2e-3 * Math.abs(loss));
        }
        SuperposedState end = alone.states().get(DAYS.length);
        assertTrue(start.head()[0] - end.head()[0] > 0.2, "boundaries move heads");
    }

    /** Bore 1 takes so much that the flowing bore and the spring stop. */
    private static FlowProblem drying() {
        FlowProblem problem = field(true, 0, 1);
        List<Bore> bores = new ArrayList<>(problem.bores());
        bores.set(1, bores.get(1).withPhases(List.of(new OperatingPhase(0, StationResponsesTest.pumped(15000)))));
        return problem.withBores(bores);
    }

    private static SuperposedRun run(FlowProblem problem, StationResponses responses, double tolerance) {
        SuperposedRun run =
                SuperposedRun.fromSteady(problem, problem.withBores(field(true).bores()), responses, tolerance);
        run.run(DAYS, END);
        return run;
    }

    /**
     * Of a flowing bore and a spring that have stopped all is put down to the bores, whatever steps the run has made: with a
     * hundred times the tolerance, much longer ones. Before, all that they still gave where the step began in which they stopped
     * was put down to none, and parts differed by up to 0.1 m from steps to steps.
     */
    @Test
    void whatHasStoppedIsPutDownToBoresWhateverTheSteps() {
        FlowProblem problem = drying();
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        SuperposedRun fine = run(problem, responses, 1e-4);
        SuperposedRun coarse = run(problem, responses, 1e-2);
        assertTrue(fine.history().steps() > 2 * coarse.history().steps(), "steps");
        Attribution.Split[] byFine = split(problem, responses, fine);
        Attribution.Split[] byCoarse = split(problem, responses, coarse);
        int last = DAYS.length - 1;
        SuperposedState start = fine.states().get(0);
        SuperposedState state = fine.states().get(DAYS.length);
        for (int point = 2; point < 4; point++) {
            assertTrue(start.discharge()[point] > 50, "it flows at the start");
            assertEquals(0, state.discharge()[point], "it has stopped");
            assertEquals(
                    lostFrom(fine, point),
                    Arrays.stream(byFine[last].loss()[point]).sum(),
                    1e-6,
                    "of " + point);
            assertEquals(
                    lostFrom(coarse, point),
                    Arrays.stream(byCoarse[last].loss()[point]).sum(),
                    1e-6,
                    "of " + point);
        }
        for (int receptor = 0; receptor < 4; receptor++) {
            double drawdown = start.head()[receptor] - state.head()[receptor];
            assertEquals(
                    drawdown, Arrays.stream(byFine[last].drawdown()[receptor]).sum(), 1e-3, "at " + receptor);
            for (int bore = 0; bore < 2; bore++) {
                assertEquals(
                        byFine[last].drawdown()[receptor][bore],
                        byCoarse[last].drawdown()[receptor][bore],
                        1e-3,
                        "at " + receptor + " by " + bore);
            }
        }
    }

    private static double lostFrom(SuperposedRun run, int point) {
        return run.states().get(0).discharge()[point];
    }

    /** A bore whose outlet is raised above its head stops by that: it is put down to no bore. */
    @Test
    void whatARaisedOutletStopsIsPutDownToNoBore() {
        FlowProblem problem = field(true, 1);
        List<Bore> bores = new ArrayList<>(problem.bores());
        bores.set(
                2,
                bores.get(2)
                        .withPhases(List.of(
                                new OperatingPhase(-1, flowing()),
                                new OperatingPhase(400, new Operation.FreeFlow(130)))));
        FlowProblem raised = problem.withBores(bores);
        StationResponses responses = StationResponses.fromSteady(raised, List.of(), END, SETTINGS);
        SuperposedRun run = run(raised, responses, 1e-3);
        Attribution.Split before = split(raised, responses, run)[0];
        Attribution.Split after = split(raised, responses, run)[1];
        double whole = run.states().get(0).discharge()[2];
        assertEquals(0, run.states().get(2).discharge()[2], "it has stopped");
        double lost = Arrays.stream(before.loss()[2]).sum();
        double explained = Arrays.stream(after.loss()[2]).sum();
        assertTrue(explained > 0.5 * lost && explained < 0.7 * whole, lost + ", " + explained + " of " + whole);
    }
}

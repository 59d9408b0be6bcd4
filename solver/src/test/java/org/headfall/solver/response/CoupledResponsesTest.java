package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.PumpCurve;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The reference is a run with a little more and a little less of one rate: a spring that flows, a bore that flows by itself
 * in some years only, and a pump on its curve answer.
 */
class CoupledResponsesTest {

    private static final double END = 4000;
    private static final double[] FROM = {0, 365, 1000, 2400};
    private static final double[] RATES = {1800, 300, 1500, 900};
    private static final double[] DAYS = {200, 365, 700, 1200, 2500, END};

    private static final double CHANGE = 20;
    /** A hundred-thousandth of what a unit does to the bore itself, some of which the runs leave uncertain (d/m²). */
    private static final double NOISE = 1e-6;

    /** Share of a change of rate that is noise of the runs. */
    private static final double LITTLE = 2e-4;

    private static final double EXACT = 1e-6;
    private static final Settings SETTINGS = new Settings(1e-4, Double.POSITIVE_INFINITY, 1);
    private static final int PUMPED = 0;

    private static FlowProblem field(double[] rates) {
        PumpCurve curve = new PumpCurve(new double[] {0, 800, 1600}, new double[] {40, 34, 20});
        Operation pumped = new Operation.PumpedRate(new StepSchedule(FROM, rates), OptionalDouble.empty());
        FlowProblem field = StationResponsesTest.field(
                pumped,
                new Operation.FreeFlow(105),
                new Operation.PumpedByCurve(curve, 135, Optional.empty(), OptionalDouble.empty()));
        List<Bore> bores = new ArrayList<>(field.bores());
        bores.set(
                1,
                bores.get(1)
                        .withPhases(List.of(
                                new OperatingPhase(0, new Operation.FreeFlow(105)),
                                new OperatingPhase(1500, new Operation.Off()),
                                new OperatingPhase(2200, new Operation.FreeFlow(105)))));
        return field.withBores(bores);
    }

    /** The start knows nothing of the rates. */
    private static FlowProblem atRest(FlowProblem problem) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        bores.set(PUMPED, bores.get(PUMPED).withPhases(List.of()));
        return problem.withBores(bores);
    }

    private static SuperposedRun run(FlowProblem problem, StationResponses responses, double[] days) {
        SuperposedRun run = SuperposedRun.fromSteady(problem, atRest(problem), responses, EXACT);
        run.run(days, END);
        return run;
    }

    private static double[] changed(int interval, double change) {
        double[] rates = RATES.clone();
        rates[interval] += change;
        return rates;
    }

    @Test
    void effectsAreThoseOfALittleMoreOfARate() {
        FlowProblem problem = field(RATES);
        ObservedHead point = StationResponsesTest.point(problem);
        StationResponses responses = StationResponses.fromSteady(problem, List.of(point), END, SETTINGS);
        CoupledResponses coupled = new CoupledResponses(
                responses.responses(),
                HeadAnswers.of(problem, run(problem, responses, DAYS).history()));
        double[] ends = {365, 1000, 2400, END};
        double answered = 0;
        for (int interval = 0; interval < FROM.length; interval++) {
            SuperposedRun more = run(field(changed(interval, CHANGE)), responses, DAYS);
            SuperposedRun less = run(field(changed(interval, -CHANGE)), responses, DAYS);
            double[] pulse = new double[FROM.length];
            pulse[interval] = 1;
            CoupledResponses.Changes forward = coupled.changes(new int[] {PUMPED}, FROM, new double[][] {pulse}, DAYS);
            for (int k = 0; k < DAYS.length; k++) {
                for (int receptor = 0; receptor < 5; receptor++) {
                    // States hold the start besides the days.
                    double expected = (less.states().get(k + 1).head()[receptor]
                                    - more.states().get(k + 1).head()[receptor])
                            / (2 * CHANGE);
                    double[] found = coupled.at(
                                    receptor, DAYS[k], new int[] {PUMPED}, new double[] {FROM[interval], ends[interval]
                                    })[0];
                    double alone = responses.responses().at(receptor, PUMPED, DAYS[k] - FROM[interval])
                            - responses.responses().at(receptor, PUMPED, DAYS[k] - ends[interval]);
                    String where = "receptor " + receptor + " day " + DAYS[k] + " interval " + interval;
                    assertEquals(expected, found[0] - found[1], 0.005 * Math.abs(expected) + NOISE, where);
                    assertEquals(
                            expected, forward.drawdown()[k][receptor], 0.02 * Math.abs(expected) + 20 * NOISE, where);
                    answered = Math.max(answered, alone > 100 * NOISE ? 1 - expected / alone : 0);
                }
            }
        }
        assertTrue(answered > 0.2, "springs and bores answer by " + answered);
    }

    /** A bore without losses holds head at its wall, so that what it gives less is told by no drawdown there. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 2e-3})
    void lessIsDischargedAsByALittleMoreOfARate(double loss) {
        FlowProblem problem = withLoss(field(RATES), loss);
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        CoupledResponses coupled = new CoupledResponses(
                responses.responses(),
                HeadAnswers.of(problem, run(problem, responses, DAYS).history()));
        double[] ends = {365, 1000, 2400, END};
        double largest = 0;
        for (int interval = 0; interval < FROM.length; interval++) {
            SuperposedRun more = run(withLoss(field(changed(interval, CHANGE)), loss), responses, DAYS);
            SuperposedRun less = run(withLoss(field(changed(interval, -CHANGE)), loss), responses, DAYS);
            double[] pulse = new double[FROM.length];
            pulse[interval] = 1;
            double[][] forward = coupled.changes(new int[] {PUMPED}, FROM, new double[][] {pulse}, DAYS)
                    .lessDischarge();
            for (int k = 0; k < DAYS.length; k++) {
                for (int point = 1; point < 4; point++) {
                    String where = "point " + point + " day " + DAYS[k] + " interval " + interval;
                    double expected = (less.states().get(k + 1).discharge()[point]
                                    - more.states().get(k + 1).discharge()[point])
                            / (2 * CHANGE);
                    largest = Math.max(largest, expected);
                    assertEquals(expected, forward[k][point], 0.02 * Math.abs(expected) + 20 * LITTLE, where);
                    if (Double.isInfinite(coupled.headPerDischarge(point, DAYS[k]))) {
                        assertEquals(0, expected, LITTLE, where);
                        continue;
                    }
                    double[] found = coupled.lessDischarge(
                                    point, DAYS[k], new int[] {PUMPED}, new double[] {FROM[interval], ends[interval]})[
                            0];
                    assertEquals(expected, found[0] - found[1], 0.005 * Math.abs(expected) + LITTLE, where);
                }
            }
        }
        assertTrue(largest > 0.05, "largest share that a point gives less " + largest);
    }

    private static FlowProblem withLoss(FlowProblem problem, double loss) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        Bore one = bores.get(1);
        bores.set(1, new Bore(one.name(), one.x(), one.y(), one.screenRadius(), new WellLoss(loss, 0), one.phases()));
        return problem.withBores(bores);
    }

    /** Where nothing answers, effects are those of the aquifer alone, to what modes leave of the table. */
    @Test
    void effectsAreThoseOfTheAquiferWhereNothingAnswers() {
        FlowProblem problem = StationResponsesTest.withoutSprings(StationResponsesTest.field(
                new Operation.PumpedRate(new StepSchedule(FROM, RATES), OptionalDouble.empty()), new Operation.Off()));
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        HeadAnswers answers =
                HeadAnswers.of(problem, run(problem, responses, DAYS).history());
        assertTrue(answers.areNone());
        CoupledResponses coupled = new CoupledResponses(responses.responses(), answers);
        double[][] forward = coupled.changes(new int[] {PUMPED}, FROM, new double[][] {RATES}, DAYS)
                .drawdown();
        for (int k = 0; k < DAYS.length; k++) {
            double[][] found = coupled.at(1, DAYS[k], new int[] {PUMPED}, FROM);
            double sum = 0;
            for (int i = 0; i < FROM.length; i++) {
                double alone = responses.responses().at(1, PUMPED, DAYS[k] - FROM[i]);
                assertEquals(alone, found[0][i], 1e-12);
                sum += (RATES[i] - (i == 0 ? 0 : RATES[i - 1])) * alone;
            }
            assertEquals(sum, forward[k][1], 1e-4);
        }
    }
}

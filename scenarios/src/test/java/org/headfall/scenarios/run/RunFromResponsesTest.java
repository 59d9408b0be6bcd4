package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FileChanges;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsReader;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run answered from the responses of another; the reference is the same run simulated. */
class RunFromResponsesTest {

    private static final RunProgress SILENT = (stage, fraction) -> {};

    @TempDir
    Path parent;

    private Path earlier;

    @BeforeEach
    void runTheEarlierOne() throws IOException {
        earlier = parent.resolve("earlier");
        new ScenarioRun(ScenarioRunTest.plan(), List.of(), SILENT).into(earlier, false);
    }

    /** The idle bore flows freely at the start and the pump runs otherwise. */
    private static RunPlan otherwise() {
        RunPlan plan = ScenarioRunTest.plan();
        List<Bore> bores = plan.problem().bores();
        Operation rate = new Operation.PumpedRate(
                new StepSchedule(new double[] {0, 200}, new double[] {600, 1700}), OptionalDouble.of(110));
        return with(
                plan,
                plan.problem()
                        .withBores(List.of(
                                bores.get(0).withPhases(List.of(new OperatingPhase(-1, new Operation.FreeFlow(128.5)))),
                                bores.get(1).withPhases(List.of(new OperatingPhase(0, rate))))),
                plan.description());
    }

    private static RunPlan with(RunPlan plan, FlowProblem problem, RunDescription description) {
        return new RunPlan(
                description,
                problem,
                plan.start(),
                plan.settings(),
                plan.stationDays(),
                plan.gridDays(),
                plan.limits(),
                false);
    }

    @Test
    void givesWhatTheSimulationGives() throws IOException {
        RunPlan plan = otherwise();
        FinishedRun simulated = new ScenarioRun(plan, List.of(), SILENT).into(parent.resolve("simulated"), false);
        RunFromResponses answer = new RunFromResponses(plan, earlier);
        assertTrue(answer.reasonToSimulate().isEmpty());
        FinishedRun answered = answer.into(parent.resolve("answered"), false);
        for (int station = 0; station < 2; station++) {
            StationSeries expected = simulated.recording().series().get(station);
            StationSeries found = answered.recording().series().get(station);
            for (int k = 0; k < expected.days().length; k++) {
                String where = "station " + station + " day " + expected.days()[k];
                assertEquals(expected.days()[k], found.days()[k]);
                assertEquals(expected.head()[k], found.head()[k], 0.003, where);
                assertEquals(expected.levelInBore()[k], found.levelInBore()[k], 0.003, where);
                assertEquals(expected.discharge()[k], found.discharge()[k], 0.01 * 1700, where);
                assertEquals(expected.wantedDischarge()[k], found.wantedDischarge()[k], 0.01 * 1700, where);
            }
        }
        StationSeries pumped = simulated.recording().series().get(1);
        assertTrue(pumped.head()[0] - pumped.headAt(90) > 0.5, "heads fall enough to judge");
        for (int i = 0; i < simulated.limits().size(); i++) {
            assertEquals(
                    simulated.limits().get(i).outcome().words(),
                    answered.limits().get(i).outcome().words());
        }
        double[][] split = simulated.findings().interference().get(1).drawdown();
        double[][] again = answered.findings().interference().get(1).drawdown();
        for (int row = 0; row < 2; row++) {
            for (int cause = 0; cause < 2; cause++) {
                assertEquals(split[row][cause], again[row][cause], 0.01);
            }
        }
    }

    @Test
    void writesTheTablesAndSaysThatThereAreNoMaps() throws IOException {
        Path folder = parent.resolve("answered");
        FinishedRun answered = new RunFromResponses(otherwise(), earlier).into(folder, false);
        for (String name :
                List.of("artesian-head.csv", "interference.csv", "limits.csv", "bores.csv", "summary.json")) {
            assertTrue(Files.isRegularFile(folder.resolve(name)), name);
        }
        assertEquals(new FileChanges(folder, Map.of(), List.of(), List.of()), FileChanges.in(folder));
        assertFalse(Files.exists(folder.resolve("heads.nc")));
        assertTrue(answered.figures().answeredFrom().orElseThrow().words().contains(earlier.toString()));
        ResultsException noMaps = assertThrows(ResultsException.class, () -> new ResultsReader().read(folder));
        assertEquals(ResultsException.Kind.NOT_FINISHED, noMaps.kind());
    }

    @Test
    void refusesResponsesOfAnotherAquifer() {
        RunPlan plan = otherwise();
        List<Bore> bores = plan.problem().bores();
        Bore moved = new Bore(
                "idle", 3300, 5250, 0.1, bores.get(0).wellLoss(), bores.get(0).phases());
        RunPlan other = with(plan, plan.problem().withBores(List.of(moved, bores.get(1))), plan.description());
        ResultsException refused = assertThrows(ResultsException.class, () -> new RunFromResponses(other, earlier));
        assertEquals(ResultsException.Kind.OF_ANOTHER_AQUIFER, refused.kind());
        assertTrue(String.valueOf(refused.getMessage()).contains("places and radii of the bores"));
    }

    @Test
    void leavesALongerRunToTheSimulation() throws IOException {
        RunPlan plan = otherwise();
        RunDescription run = plan.description();
        RunDescription longer =
                SmallField.plainRun(run.title(), run.calendar(), 20 * run.endDay(), run.aquifer(), run.stations());
        RunFromResponses answer = new RunFromResponses(with(plan, plan.problem(), longer), earlier);
        assertTrue(answer.reasonToSimulate().orElseThrow().contains("reach day"));
        assertThrows(IllegalStateException.class, () -> answer.into(parent.resolve("answered"), false));
    }

    /** The pumped bore of the field runs otherwise and nothing else takes water. */
    private static RunPlan pumped(Operation operation) {
        RunPlan plan = ScenarioRunTest.plan();
        List<Bore> bores = plan.problem().bores();
        return with(
                plan,
                plan.problem()
                        .withBores(List.of(
                                bores.get(0), bores.get(1).withPhases(List.of(new OperatingPhase(0, operation))))),
                plan.description());
    }

    private static Operation rate(double rate, OptionalDouble lowestLevel) {
        return new Operation.PumpedRate(Schedule.constant(rate), lowestLevel);
    }

    /** A rate so large that superposing errs by 3 mm: too much where it is given, allowed where it follows head. */
    @Test
    void promisesAMillimetreWhereRatesAreGivenAndFiveWhereTheyFollowHead() throws IOException {
        SuperposedRun small = new RunFromResponses(pumped(rate(1000, OptionalDouble.empty())), earlier)
                .answer()
                .orElseThrow();
        assertFalse(small.followsHead());
        double rate = 1000 * 0.003 / small.estimatedError();
        RunFromResponses given = new RunFromResponses(pumped(rate(rate, OptionalDouble.empty())), earlier);
        assertEquals(
                "superposing given rates may be off by 0.0030 m, above 0.001 m",
                given.reasonToSimulate().orElseThrow());
        assertThrows(IllegalStateException.class, () -> given.into(parent.resolve("answered"), false));
        OptionalDouble neverReached = OptionalDouble.of(-1e7);
        RunFromResponses following = new RunFromResponses(pumped(rate(rate, neverReached)), earlier);
        assertTrue(following.reasonToSimulate().isEmpty(), following.reasonToSimulate()::toString);
        assertTrue(following.answer().orElseThrow().followsHead());
        RunFromResponses beyond = new RunFromResponses(pumped(rate(2 * rate, neverReached)), earlier);
        assertTrue(
                beyond.reasonToSimulate()
                        .orElseThrow()
                        .matches(
                                "finding discharges that follow head step by step may be off by 0\\.00[67]\\d m, above 0\\.005 m"));
    }

    /** What is stated is what superposing may leave and what the responses may be off by. */
    @Test
    void theErrorStatedCountsTheResponses() throws IOException {
        RunFromResponses answer = new RunFromResponses(pumped(rate(1000, OptionalDouble.empty())), earlier);
        SuperposedRun run = answer.answer().orElseThrow();
        assertTrue(run.errorOfResponses() > 0);
        assertEquals(
                run.estimatedError() + run.errorOfResponses(),
                answer.finished().figures().answeredFrom().orElseThrow().estimatedError(),
                1e-15);
    }

    /** No level to flow out at: what the bore gives cannot be found. */
    @Test
    void leavesAnUnmetRuleToTheSimulation() throws IOException {
        RunFromResponses answer = new RunFromResponses(pumped(new Operation.FreeFlow(Double.NaN)), earlier);
        assertTrue(answer.reasonToSimulate().orElseThrow().startsWith("the rule of 'pumped' cannot be met"));
    }

    /** More changes of the rate than steps are taken. */
    @Test
    void leavesTooManyStepsToTheSimulation() throws IOException {
        double[] days = new double[400_001];
        double[] rates = new double[days.length];
        Arrays.setAll(days, i -> i * 600.0 / days.length);
        Arrays.setAll(rates, i -> 500 + i % 2);
        Operation restless = new Operation.PumpedRate(new StepSchedule(days, rates), OptionalDouble.empty());
        String reason = new RunFromResponses(pumped(restless), earlier)
                .reasonToSimulate()
                .orElseThrow();
        assertTrue(reason.startsWith("discharges change so often that 200000 steps reach day "), reason);
    }

    /** Where all rates are given 1 mm is promised of superposing, however far rates are moved from those of the run. */
    @Test
    void linearRunsKeepToWhatIsPromisedWhereAllRatesAreGiven() throws IOException {
        RunFromResponses base = new RunFromResponses(ScenarioRunTest.plan(), earlier);
        SuperposedRun answered = base.answer().orElseThrow();
        double perRate = answered.errorWhenMovedBy(1e6) / 1e6;
        assertTrue(base.statedError(moved(base, 0.9e-3 / perRate)).isPresent());
        assertTrue(base.statedError(moved(base, 1.1e-3 / perRate)).isEmpty());
    }

    private static List<StationSeries> moved(RunFromResponses base, double by) {
        return base.series().series().stream()
                .map(one -> {
                    double[] discharge = one.discharge().clone();
                    discharge[discharge.length - 1] = discharge[0] + by;
                    return new StationSeries(
                            one.days(), one.head(), one.levelInBore(), discharge, one.wantedDischarge());
                })
                .toList();
    }
}

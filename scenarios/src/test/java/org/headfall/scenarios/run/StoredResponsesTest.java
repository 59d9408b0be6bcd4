package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;
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
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The responses that a run leaves, read back and asked whether they still hold. */
class StoredResponsesTest {

    private static final RunPlan PLAN = ScenarioRunTest.plan();

    @TempDir
    Path parent;

    private static ResponseKey key(FlowProblem problem) {
        return ResponseKey.of(PLAN.description(), problem, PLAN.start().given());
    }

    private static FlowProblem with(Aquifer aquifer, List<OuterBoundary> boundaries, List<Bore> bores) {
        return new FlowProblem(aquifer, Optional.empty(), boundaries, List.of(), List.of(), bores);
    }

    private static OuterBoundary west(Schedule head) {
        return new OuterBoundary.FixedHead(
                "west", SideSegment.whole(Side.WEST, PLAN.problem().aquifer().grid()), head);
    }

    @Test
    void comeBackFromTheirFileAsTheyWere() throws IOException {
        FlowProblem changing = with(
                PLAN.problem().aquifer(),
                List.of(west(new LinearSchedule(new double[] {0, 300}, new double[] {130, 128}))),
                PLAN.problem().bores());
        RunPlan plan = new RunPlan(
                PLAN.description(),
                changing,
                PLAN.start(),
                PLAN.settings(),
                PLAN.stationDays(),
                PLAN.gridDays(),
                List.of(),
                false);
        new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(parent.resolve("run"), false);
        ResponseKey key = key(changing);
        StoredResponses stored = ResponsesReader.read(parent.resolve("run")).stored();
        assertEquals(List.of(), key.differencesTo(stored.key()));
        assertEquals(key.aquiferKey(), stored.key().aquiferKey());
        StationResponses read = stored.forProblem(changing, Optional.empty());
        StationResponses computed = computed(plan);
        for (double day : new double[] {1e-4, 0.3, 40, 700}) {
            assertEquals(computed.responses().at(0, 1, day), read.responses().at(0, 1, day), 1e-15);
            assertArrayEquals(computed.undisturbed().on(day), read.undisturbed().on(day), 1e-12);
        }
        assertNotEquals(read.undisturbed().on(0)[0], read.undisturbed().on(700)[0], 0.5);
        assertEquals(computed.responses().steadyAt(0, 1), read.responses().steadyAt(0, 1));
    }

    private StationResponses computed(RunPlan plan) throws IOException {
        try (RunResponses responses = new RunResponses(parent)) {
            StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
            return responses.fields(plan, start).stations();
        }
    }

    @Test
    void aFolderWithoutThemIsNamed() {
        ResultsException missing = assertThrows(ResultsException.class, () -> ResponsesReader.read(parent));
        assertEquals(ResultsException.Kind.NOT_FINISHED, missing.kind());
    }

    @Test
    void whatChangesTheAquiferIsNamed() {
        Aquifer aquifer = PLAN.problem().aquifer();
        List<OuterBoundary> boundaries = PLAN.problem().boundaries();
        List<Bore> bores = PLAN.problem().bores();
        double[] more = aquifer.transmissivityX().clone();
        more[17] *= 1 + 1e-12;
        Aquifer other = new Aquifer(
                aquifer.grid(), more, more, aquifer.storativity(), aquifer.top(), aquifer.bottom(), aquifer.active());
        assertEquals(List.of("transmissivity"), differences(with(other, boundaries, bores)));
        RectilinearGrid wider = new RectilinearGrid(Axis.uniform(0, 500, 20), Axis.uniform(0, 500, 21));
        assertEquals(
                List.of("grid", "transmissivity", "storativity", "kinds and places of the boundaries"),
                differences(with(
                        Aquifer.homogeneous(wider, 200, 2e-4),
                        List.of(new OuterBoundary.FixedHead(
                                "west", SideSegment.whole(Side.WEST, wider), Schedule.constant(130))),
                        bores)));
        assertEquals(
                List.of("heads and flows of the boundaries"),
                differences(with(aquifer, List.of(west(Schedule.constant(131))), bores)));
        assertEquals(
                List.of("names, places and radii of the bores"),
                differences(with(
                        aquifer,
                        boundaries,
                        List.of(bores.get(0), new Bore("pumped", 5251, 5250, 0.1, WellLoss.NONE, List.of())))));
    }

    @Test
    void ratesRulesAndLossesAreNoPartOfTheKey() {
        List<Bore> bores = PLAN.problem().bores();
        Bore otherwise = new Bore(
                "pumped",
                5250,
                5250,
                0.1,
                new WellLoss(1e-4, 1e-7),
                List.of(
                        new OperatingPhase(0, new Operation.PumpedRate(Schedule.constant(300), OptionalDouble.of(90))),
                        new OperatingPhase(90, new Operation.FreeFlow(100))));
        assertEquals(
                List.of(),
                differences(
                        with(PLAN.problem().aquifer(), PLAN.problem().boundaries(), List.of(bores.get(0), otherwise))));
    }

    private static List<String> differences(FlowProblem problem) {
        return key(problem).differencesTo(key(PLAN.problem()));
    }
}

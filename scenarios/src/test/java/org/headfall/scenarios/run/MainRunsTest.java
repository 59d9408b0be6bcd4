package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.MapPlaces;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.scenario.Solving;
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
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** By superposition and by steps a run records the same. */
class MainRunsTest {

    @TempDir
    Path folder;

    private static final double HEAD = 130;
    private static final double TOP = 126;

    /** A pump that draws heads below the top of the aquifer for some months a year, between yearly grids; and a free flow. */
    private static RunPlan plan(Solving solving, double accuracy, boolean doubts) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 500, 24), Axis.uniform(0, 500, 20));
        int cells = grid.cellCount();
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        double[] t = SmallField.filled(cells, 200);
        Aquifer aquifer = new Aquifer(
                grid,
                t,
                t,
                SmallField.filled(cells, 2e-4),
                SmallField.filled(cells, TOP),
                SmallField.filled(cells, 50),
                active);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        double end = calendar.yearsAfter(0, 2);
        OuterBoundary west =
                new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(HEAD));
        Operation seasonal = new Operation.PumpedRate(
                new StepSchedule(new double[] {0, 100, 190, 465, 555}, new double[] {0, 1500, 0, 1600, 0}),
                OptionalDouble.empty());
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.empty(),
                List.of(west),
                List.of(),
                List.of(),
                List.of(
                        new Bore(
                                "flowing",
                                3250,
                                5250,
                                0.1,
                                new WellLoss(0, 1e-6),
                                List.of(new OperatingPhase(0, new Operation.FreeFlow(128.5)))),
                        new Bore("pumped", 6210, 5250, 0.1, WellLoss.NONE, List.of(new OperatingPhase(0, seasonal)))));
        List<Station> stations = List.of(
                SmallField.bore("flowing", 3250, 5250, OptionalDouble.of(128.5), OptionalDouble.empty(), false),
                SmallField.bore("pumped", 6210, 5250, OptionalDouble.empty(), OptionalDouble.of(60), true));
        RunDescription description = SmallField.plainRun("A season", calendar, end, aquifer, stations);
        return new RunPlan(
                description,
                problem,
                new StartHeads.Steady(Set.of("flowing")),
                new Settings(accuracy, Double.POSITIVE_INFINITY, 1),
                IntStream.range(1, 24).mapToDouble(month -> 30.4375 * month).toArray(),
                new double[0],
                List.of(),
                MapPlaces.NONE,
                Optional.empty(),
                doubts,
                solving);
    }

    private record Made(Recording recording, MainRun.Found found) {}

    private Made made(RunPlan plan) throws IOException {
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays());
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        Recorder recorder = new Recorder(plan.description(), plan.problem().boundaries(), records, List.of());
        recorder.recorded(start.snapshot());
        try (RunResponses responses = new RunResponses(folder)) {
            MainRun.Found found = new MainRuns(plan, start, records, responses, (stage, fraction) -> {})
                    .choose()
                    .run(recorder);
            return new Made(recorder.recording(), found);
        }
    }

    @Test
    void superpositionRecordsWhatStepsRecord() throws IOException {
        Made steps = made(plan(Solving.BY_STEPS, 1e-4, false));
        Made superposed = made(plan(Solving.BY_SUPERPOSITION, 1e-3, false));
        assertFalse(steps.found().solvedBy().superposition());
        assertTrue(superposed.found().solvedBy().superposition());
        assertArrayEquals(steps.recording().days(), superposed.recording().days());
        for (int i = 0; i < 2; i++) {
            assertArrayEquals(
                    steps.recording().series().get(i).head(),
                    superposed.recording().series().get(i).head(),
                    2e-3);
            assertArrayEquals(
                    steps.recording().series().get(i).discharge(),
                    superposed.recording().series().get(i).discharge(),
                    0.5);
        }
        for (int k = 0; k < steps.recording().grids().size(); k++) {
            assertArrayEquals(
                    steps.recording().grids().get(k).head(),
                    superposed.recording().grids().get(k).head(),
                    2e-3);
        }
        assertEquals(
                steps.recording().balances().size(),
                superposed.recording().balances().size());
    }

    /** Also in months between two grids, and not counted as such on the days of the grids. */
    @Test
    void cellsThatAreNotConfinedForAWhileAreFound() throws IOException {
        double[] steps = made(plan(Solving.BY_STEPS, 1e-4, false)).recording().notConfinedSince();
        double[] superposed =
                made(plan(Solving.BY_SUPERPOSITION, 1e-3, false)).recording().notConfinedSince();
        int found = 0;
        int other = 0;
        for (int cell = 0; cell < steps.length; cell++) {
            found += Double.isNaN(steps[cell]) ? 0 : 1;
            other += Double.compare(steps[cell], superposed[cell]) == 0 ? 0 : 1;
        }
        assertTrue(found > 10, found + " cells");
        assertTrue(other <= found / 20, other + " cells of " + found + " otherwise");
    }

    @Test
    void superpositionIsTakenWhereItKeepsTheTolerance() throws IOException {
        assertTrue(made(plan(Solving.AUTOMATIC, 0.01, false)).found().solvedBy().superposition());
    }

    @Test
    void stepsAreTakenWhereItMightNot() throws IOException {
        MainRun.Found found = made(plan(Solving.AUTOMATIC, 2e-6, false)).found();
        assertFalse(found.solvedBy().superposition());
        assertTrue(
                found.solvedBy().words().contains("may err by"),
                found.solvedBy().words());
    }

    /** The repeats that find the errors of a run go by steps, and are compared with it. */
    @Test
    void stepsAreTakenWhereErrorsAreFoundByRepeats() throws IOException {
        assertFalse(made(plan(Solving.AUTOMATIC, 0.01, true)).found().solvedBy().superposition());
    }
}

package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsReader;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScenarioRunTest {

    private static final double HEAD = 130;

    @TempDir
    Path parent;

    /** Level heads of 130 m in a homogeneous field of 10 km; an existing idle bore and a proposed pumped one. */
    static RunPlan plan() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 500, 20), Axis.uniform(0, 500, 20));
        Aquifer aquifer = Aquifer.homogeneous(grid, 200, 2e-4);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        double end = calendar.yearsAfter(0, 2);
        OuterBoundary west =
                new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(HEAD));
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.empty(),
                List.of(west),
                List.of(),
                List.of(),
                List.of(
                        new Bore("idle", 3250, 5250, 0.1, WellLoss.NONE, List.of()),
                        new Bore(
                                "pumped",
                                5250,
                                5250,
                                0.1,
                                WellLoss.NONE,
                                List.of(new OperatingPhase(
                                        0,
                                        new Operation.PumpedRate(Schedule.constant(1000), OptionalDouble.empty()))))));
        List<Station> stations = List.of(
                SmallField.bore("idle", 3250, 5250, OptionalDouble.of(129), OptionalDouble.empty(), false),
                SmallField.bore("pumped", 5250, 5250, OptionalDouble.empty(), OptionalDouble.of(60), true));
        RunDescription description = SmallField.plainRun("Two bores", calendar, end, aquifer, stations);
        return new RunPlan(
                description,
                problem,
                new StartHeads.Steady(Set.of("idle")),
                Settings.DEFAULT,
                new double[] {30, 60, 90},
                new double[0],
                List.of(
                        limit(new Comparison.Start()),
                        limit(new Comparison.WithoutProposedBores()),
                        limit(new Comparison.WithoutAnyBore())),
                false);
    }

    private static Limit limit(Comparison comparison) {
        return new Limit("limit", new LimitedQuantity.Drawdown(0.5), "idle", comparison, LimitPeriod.EVER, "");
    }

    private FinishedRun run() throws IOException {
        return new ScenarioRun(plan(), StandardOutputs.all(List.of()), (stage, fraction) -> {})
                .into(parent.resolve("run"), false);
    }

    @Test
    void writesAFolderThatReadsBackAsTheSameRun() throws IOException {
        FinishedRun run = run();
        for (String name : List.of(
                "heads.nc",
                "bores.nc",
                "summary.json",
                "artesian-head.csv",
                "interference.csv",
                "bores.csv",
                "water-balance.csv",
                "limits.csv",
                "head-2027-07-01.tif",
                "drawdown-2029-07-01.tif")) {
            assertTrue(Files.isRegularFile(parent.resolve("run").resolve(name)), name);
        }
        assertFalse(Files.exists(parent.resolve("run.part")));
        assertEquals(
                run.findings().artesianHead(),
                new ResultsReader().read(parent.resolve("run")).findings().artesianHead());
    }

    @Test
    void aBoreThatStartsOnDayZeroStandsUndisturbedBefore() throws IOException {
        FinishedRun run = run();
        assertEquals(HEAD, run.recording().series().get(1).head()[0], 1e-6);
        assertEquals(0, run.recording().series().get(1).discharge()[0]);
        assertEquals(1000, run.recording().series().get(1).dischargeAt(30), 1e-9);
    }

    @Test
    void withAnUndisturbedStartAllComparisonsGiveTheSame() throws IOException {
        FinishedRun run = run();
        double drawdown =
                HEAD - run.recording().series().get(0).headAt(run.recording().endDay());
        assertTrue(drawdown > 0.5, "drawdown " + drawdown);
        assertEquals("crossed", run.limits().get(0).outcome().words());
        assertEquals("crossed", run.limits().get(1).outcome().words());
        assertEquals("crossed", run.limits().get(2).outcome().words());
    }
}

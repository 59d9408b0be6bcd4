package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.limits.MapPlaces;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.side.SideCondition;
import org.headfall.solver.analytic.side.StripSolution;
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
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Recorded maps beside a side of fixed head, however the run is solved: a bore in a strip between two such sides, at rest,
 * by images after Ferris and others (1962), USGS Water-Supply Paper 1536-E.
 */
class MapBesideFixedHeadTest {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double CELL = 100;
    private static final int COLUMNS = 16;
    private static final int ROWS = 40;
    private static final double X = 60;
    private static final double Y = 2030;
    private static final double RATE = 3000;
    private static final double HEAD = 130;

    @TempDir
    Path folder;

    private static RunPlan plan(Solving solving) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, CELL, COLUMNS), Axis.uniform(0, CELL, ROWS));
        Aquifer aquifer = Aquifer.homogeneous(grid, T, S);
        Operation pumped = new Operation.PumpedRate(Schedule.constant(RATE), OptionalDouble.empty());
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.empty(),
                List.of(held(Side.WEST, grid), held(Side.EAST, grid)),
                List.of(),
                List.of(),
                List.of(new Bore("bore", X, Y, 0.1, WellLoss.NONE, List.of(new OperatingPhase(0, pumped)))));
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        RunDescription description = SmallField.plainRun(
                "A bore at a side of fixed head",
                calendar,
                calendar.yearsAfter(0, 1),
                aquifer,
                List.of(SmallField.bore("bore", X, Y, OptionalDouble.empty(), OptionalDouble.empty(), true)));
        return new RunPlan(
                description,
                problem,
                new StartHeads.Steady(Set.of()),
                new Settings(1e-3, Double.POSITIVE_INFINITY, 1),
                new double[0],
                new double[0],
                List.of(),
                MapPlaces.NONE,
                Optional.empty(),
                false,
                solving);
    }

    private static OuterBoundary held(Side side, RectilinearGrid grid) {
        return new OuterBoundary.FixedHead("head " + side, SideSegment.whole(side, grid), Schedule.constant(HEAD));
    }

    @ParameterizedTest
    @EnumSource(
            value = Solving.class,
            names = {"BY_STEPS", "BY_SUPERPOSITION"})
    void headsAreThoseAtTheCentresOfCells(Solving solving) throws IOException {
        RunPlan plan = plan(solving);
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays());
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        Recorder recorder = new Recorder(plan.description(), plan.problem().boundaries(), records, List.of());
        recorder.recorded(start.snapshot());
        try (RunResponses responses = new RunResponses(folder)) {
            new MainRuns(plan, start, records, responses, (stage, fraction) -> {})
                    .choose()
                    .run(recorder);
        }
        List<HeadGrid> grids = recorder.recording().grids();
        double[] head = grids.get(grids.size() - 1).head();
        StripSolution exact = new StripSolution(
                new TheisSolution(T, S), COLUMNS * CELL, SideCondition.FIXED_HEAD, SideCondition.FIXED_HEAD);
        PumpedBore bore = new PumpedBore(X, Y, RATE);
        RectilinearGrid grid = plan.description().grid();
        int row = (int) (Y / CELL);
        for (int column = 0; column < 3; column++) {
            for (int away = 1; away <= 3; away++) {
                int cell = grid.cell(column, row + away);
                double drawdown = exact.drawdown(bore, grid.centreX(cell), grid.centreY(cell), 365);
                assertEquals(drawdown, HEAD - head[cell], 0.005 * drawdown + 0.002, column + ", " + away);
            }
        }
    }
}

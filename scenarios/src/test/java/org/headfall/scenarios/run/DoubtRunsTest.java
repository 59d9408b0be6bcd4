package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsReader;
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
import org.headfall.solver.time.StepSizeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bore at rest between two straight sides, whose heads are known, and one behind a far head. */
class DoubtRunsTest {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double HEAD = 130;
    private static final double CELL = 100;
    private static final double BORE_X = 430;
    private static final double RADIUS = 0.1;

    @TempDir
    Path folder;

    /** A strip 1.6 km wide; a bore in its middle that has been pumped for ever. */
    private record Strip(int rows, double rate, OuterBoundary west, OuterBoundary east, List<Station> points) {

        private RectilinearGrid grid() {
            return new RectilinearGrid(Axis.uniform(0, CELL, 16), Axis.uniform(0, CELL, rows));
        }

        private double boreY() {
            return CELL * rows / 2 + 70;
        }

        RunPlan plan(List<Limit> limits) {
            RectilinearGrid grid = grid();
            Aquifer aquifer = Aquifer.homogeneous(grid, T, S);
            Bore bore = new Bore(
                    "bore",
                    BORE_X,
                    boreY(),
                    RADIUS,
                    WellLoss.NONE,
                    List.of(new OperatingPhase(
                            0, new Operation.PumpedRate(Schedule.constant(rate), OptionalDouble.empty()))));
            List<Station> stations = new ArrayList<>();
            stations.add(
                    SmallField.bore("bore", BORE_X, boreY(), OptionalDouble.empty(), OptionalDouble.empty(), false));
            stations.addAll(points);
            RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
            RunDescription description = SmallField.plainRun(
                    "A bore between two sides", calendar, calendar.yearsAfter(0, 2), aquifer, stations);
            return new RunPlan(
                    description,
                    new FlowProblem(
                            aquifer, Optional.empty(), List.of(west, east), List.of(), List.of(), List.of(bore)),
                    new StartHeads.Steady(Set.of("bore")),
                    Settings.DEFAULT,
                    new double[0],
                    new double[0],
                    limits,
                    false);
        }
    }

    private static OuterBoundary fixedHead(Side side, int rows) {
        return new OuterBoundary.FixedHead("head " + side, new SideSegment(side, 0, rows - 1), Schedule.constant(HEAD));
    }

    private static Strip betweenFixedHeads(List<Station> points) {
        return new Strip(64, 4000, fixedHead(Side.WEST, 64), fixedHead(Side.EAST, 64), points);
    }

    private static List<Station> net() {
        List<Station> points = new ArrayList<>();
        for (double x = 60; x < 1600; x += 177) {
            for (double y = 2700; y < 3900; y += 213) {
                points.add(new Station.ProtectedPoint(x + ", " + y, x, y, 100, OptionalDouble.empty()));
            }
        }
        return points;
    }

    private FinishedRun run(RunPlan plan) throws IOException {
        return new ScenarioRun(plan, StandardOutputs.all(List.of()), (stage, fraction) -> {})
                .into(folder.resolve("run"), true);
    }

    private List<NamedCsvRecord> doubtsCsv() throws IOException {
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(folder.resolve("run").resolve("doubts.csv"))) {
            return reader.stream().toList();
        }
    }

    /**
     * Images after Ferris and others (1962), USGS Water-Supply Paper 1536-E, at 200 d: 78 times S L^2 / T, so at rest. A
     * single point may stand where the errors of both grids happen to cancel; the bore and the middle of a net of points
     * must not.
     */
    @Test
    void theErrorOfTheGridIsThatAgainstTheClosedForm() throws IOException {
        Strip strip = betweenFixedHeads(net());
        RunPlan plan = strip.plan(List.of()).withDoubts();
        FinishedRun run = run(plan);
        List<ErrorBudget.Line> lines = run.figures().errorBudget().orElseThrow().lines();
        StripSolution exact = new StripSolution(
                new TheisSolution(T, S), 16 * CELL, SideCondition.FIXED_HEAD, SideCondition.FIXED_HEAD);
        PumpedBore bore = new PumpedBore(BORE_X, strip.boreY(), strip.rate());
        double[] estimateOverTruth = new double[plan.description().stations().size()];
        for (int i = 0; i < estimateOverTruth.length; i++) {
            Station station = plan.description().stations().get(i);
            double wall = i == 0 ? RADIUS : 0;
            double truth = HEAD - exact.drawdown(bore, station.x() + wall, station.y(), 200);
            double error = run.recording().series().get(i).headAt(365) - truth;
            estimateOverTruth[i] = lines.get(2 * i).grid().orElseThrow() / Math.abs(error);
        }
        within3(estimateOverTruth[0]);
        Arrays.sort(estimateOverTruth);
        within3(estimateOverTruth[estimateOverTruth.length / 2]);
    }

    private static void within3(double ratio) {
        assertTrue(ratio > 1 / 3.0 && ratio < 3, "estimate over truth " + ratio);
    }

    @Test
    void withoutAFarHeadTheBoundaryIsLeftOutAndTheTablesSaySo() throws IOException {
        FinishedRun run = run(betweenFixedHeads(List.of()).plan(List.of()).withDoubts());
        ErrorBudget budget = run.figures().errorBudget().orElseThrow();
        assertEquals(2, budget.lines().size());
        for (ErrorBudget.Line line : budget.lines()) {
            assertEquals(OptionalDouble.empty(), line.boundary());
            assertEquals(line.time() + line.grid().orElseThrow() + line.solver(), line.together(), 1e-15);
        }
        String html = Files.readString(folder.resolve("run").resolve("report.html"));
        assertTrue(html.contains("<caption>Numerical error of heads</caption>"), "table of the report");
        assertTrue(html.contains("no boundary with a far head"), "the report says what is left out");
        NamedCsvRecord line = doubtsCsv().get(0);
        assertEquals(
                List.of(
                        "station",
                        "when",
                        "date",
                        "time (m)",
                        "grid (m)",
                        "solver (m)",
                        "boundary (m)",
                        "together (m)"),
                line.getHeader());
        assertEquals("bore", line.getField("station"));
        assertEquals("2028-07-01", line.getField("date"));
        assertEquals("", line.getField("boundary (m)"));
        assertEquals(budget.lines().get(0).together(), Double.parseDouble(line.getField("together (m)")), 0.6e-5);
        assertEquals(
                Optional.of(budget),
                new ResultsReader().read(folder.resolve("run")).figures().errorBudget());
    }

    /** Behind a far head all water of a strip crosses {@code distance} more aquifer: Darcy's law, dh = Q d / (T w). */
    @Test
    void theBoundaryCountsWhatHalfAsFarAgainWouldLower() throws IOException {
        int rows = 4;
        double rate = 100;
        double distance = 2000;
        OuterBoundary far = new OuterBoundary.FarHead(
                "far", new SideSegment(Side.WEST, 0, rows - 1), Schedule.constant(HEAD), distance);
        OuterBoundary closed =
                new OuterBoundary.GivenFlow("closed", new SideSegment(Side.EAST, 0, rows - 1), Schedule.constant(0));
        FinishedRun run = run(
                new Strip(rows, rate, far, closed, List.of()).plan(List.of()).withDoubts());
        ErrorBudget.Line line =
                run.figures().errorBudget().orElseThrow().lines().get(0);
        double expected = 0.5 * rate * distance / (T * rows * CELL);
        assertEquals(expected, line.boundary().orElseThrow(), 0.002 * expected);
    }

    /** All water of a strip crosses the far head: moving it lowers heads, but not the drawdown since a start at rest. */
    @Test
    void aLimitOnDrawdownCountsOnlyWhatTheBoundaryDoesToDrawdown() throws IOException {
        int rows = 4;
        OuterBoundary far = new OuterBoundary.FarHead(
                "far", new SideSegment(Side.WEST, 0, rows - 1), Schedule.constant(HEAD), 2000);
        OuterBoundary closed =
                new OuterBoundary.GivenFlow("closed", new SideSegment(Side.EAST, 0, rows - 1), Schedule.constant(0));
        List<Limit> limits = List.of(
                limit(new LimitedQuantity.Drawdown(0.1), new Comparison.Start()),
                limit(new LimitedQuantity.Drawdown(0.1), new Comparison.WithoutAnyBore()));
        FinishedRun run =
                run(new Strip(rows, 100, far, closed, List.of()).plan(limits).withDoubts());
        Outcome.Holds sinceStart = (Outcome.Holds) run.limits().get(0).outcome();
        assertTrue(sinceStart.worst().error() < 0.01, "of drawdown since a start at rest " + sinceStart);
        Outcome.Crossed byTheBore = (Outcome.Crossed) run.limits().get(1).outcome();
        double expected = run.figures()
                .errorBudget()
                .orElseThrow()
                .lines()
                .get(0)
                .boundary()
                .orElseThrow();
        assertEquals(expected, byTheBore.worst().error(), 0.05 * expected);
    }

    private static Limit limit(LimitedQuantity quantity, Comparison comparison) {
        return new Limit("limit", quantity, "bore", comparison, LimitPeriod.EVER, "");
    }

    @Test
    void aMarginWithinTheSumLeavesALimitUndecided() throws IOException {
        Strip strip = betweenFixedHeads(List.of());
        FinishedRun first = run(strip.plan(List.of()).withDoubts());
        double sum = first.figures().stationHeadError().get(0);
        assertTrue(sum > 0.003, "more than the millimetre of time stepping: " + sum);
        double floor = first.recording().series().get(0).headAt(365) - 0.8 * sum;
        List<Limit> limits = List.of(limit(new LimitedQuantity.FloorLevel(floor), new Comparison.Start()));
        assertEquals("undecided", outcome(run(strip.plan(limits).withDoubts())));
        FinishedRun without = run(strip.plan(limits));
        assertEquals("holds", outcome(without));
        assertFalse(Files.exists(folder.resolve("run").resolve("doubts.csv")));
        String html = Files.readString(folder.resolve("run").resolve("report.html"));
        assertTrue(html.contains("--doubts"), "the report says how to get the errors");
    }

    private static String outcome(FinishedRun run) {
        return run.limits().get(0).outcome().words();
    }

    @Test
    void aBoundaryTooShortForWiderCellsLeavesTheGridOpen() throws IOException {
        OuterBoundary shortSide =
                new OuterBoundary.FixedHead("short", new SideSegment(Side.WEST, 1, 1), Schedule.constant(HEAD));
        FinishedRun run = run(new Strip(4, 100, shortSide, fixedHead(Side.EAST, 4), List.of())
                .plan(List.of())
                .withDoubts());
        ErrorBudget budget = run.figures().errorBudget().orElseThrow();
        assertEquals(OptionalDouble.empty(), budget.lines().get(0).grid());
        assertTrue(
                budget.methods()
                        .contains("Grid: not determined; boundary 'short' is one cell long and has no place on"
                                + " cells twice as wide."),
                budget.methods().toString());
    }

    /** What the solver names is told in the budget; a fault of the program must surface as one. */
    @Test
    void onlyFailuresThatTheSolverNamesAreToldInTheBudget() throws Exception {
        Repeat failed = DoubtRuns.unlessItFails(() -> {
                    throw new StepSizeException(3, 1e-12, 1e-9);
                })
                .call();
        assertEquals(Optional.empty(), failed.run());
        assertTrue(failed.reason().startsWith("the repeated run failed (at day 3"), failed.reason());
        Callable<Repeat> faulty = DoubtRuns.unlessItFails(() -> {
            throw new IllegalStateException("a fault");
        });
        assertThrows(IllegalStateException.class, faulty::call);
        assertThrows(IndexOutOfBoundsException.class, DoubtRuns.unlessItFails(() -> {
            throw new IndexOutOfBoundsException("a fault");
        })::call);
    }
}

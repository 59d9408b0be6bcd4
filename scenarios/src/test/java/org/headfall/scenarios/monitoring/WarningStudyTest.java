package org.headfall.scenarios.monitoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.StatedErrors;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StartHeads;
import org.headfall.solver.analytic.TheisSolution;
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

/** A pumped bore and a spring 3 km away in a field whose rim is not felt: drawdown and recovery of Theis (1935). */
class WarningStudyTest {

    private static final double T = 100;
    private static final double S = 1e-2;
    private static final double RATE = 800;
    private static final double DISTANCE = 3000;
    private static final double MIDDLE = 20_200;

    @TempDir
    Path parent;

    private static RunPlan plan(double atMost) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 400, 100), Axis.uniform(0, 400, 100));
        Aquifer aquifer = Aquifer.homogeneous(grid, T, S);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        List<Station> stations = List.of(
                SmallField.bore("pumped", MIDDLE, MIDDLE, OptionalDouble.empty(), OptionalDouble.empty(), true),
                new Station.ProtectedPoint("far", MIDDLE + DISTANCE, MIDDLE, 100, OptionalDouble.empty()),
                new Station.ProtectedPoint("watch", MIDDLE, MIDDLE + 1200, 100, OptionalDouble.empty()));
        Limit limit = new Limit(
                "far keeps its head",
                new LimitedQuantity.Drawdown(atMost),
                "far",
                new Comparison.WithoutProposedBores(),
                LimitPeriod.EVER,
                "");
        return new RunPlan(
                SmallField.plainRun("Far", calendar, calendar.yearsAfter(0, 3), aquifer, stations),
                new FlowProblem(
                        aquifer,
                        Optional.empty(),
                        List.of(new OuterBoundary.FixedHead(
                                "west", SideSegment.whole(Side.WEST, grid), Schedule.constant(130))),
                        List.of(),
                        List.of(),
                        List.of(new Bore(
                                "pumped",
                                MIDDLE,
                                MIDDLE,
                                0.1,
                                WellLoss.NONE,
                                List.of(new OperatingPhase(
                                        0,
                                        new Operation.PumpedRate(Schedule.constant(RATE), OptionalDouble.empty())))))),
                new StartHeads.Steady(Set.of()),
                Settings.DEFAULT,
                DoubleStream.iterate(10, day -> day < 1090, day -> day + 10).toArray(),
                new double[0],
                List.of(limit),
                false);
    }

    private List<Warning> warnings(RunPlan plan) throws IOException {
        StatedErrors stated = ran(plan);
        return new WarningStudy(plan, new RunFromResponses(plan, parent.resolve("run")), stated).warnings();
    }

    /** Makes the run and its responses. */
    private StatedErrors ran(RunPlan plan) throws IOException {
        FinishedRun run = new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(parent.resolve("run"), true);
        return new StatedErrors(run.figures().stationHeadError(), run.limits(), false);
    }

    /** Largest drawdown at the spring if the bore has been stopped on a day: recovery is a bore that injects from then on. */
    private static double largestIfStopped(double day) {
        TheisSolution theis = new TheisSolution(T, S);
        return DoubleStream.iterate(day, later -> later < 1095, later -> later + 1)
                .map(later -> theis.drawdown(RATE, DISTANCE, later)
                        - (later > day ? theis.drawdown(RATE, DISTANCE, later - day) : 0))
                .max()
                .orElseThrow();
    }

    @Test
    void theLastDayIsThatOfTheRecoveryOfTheis() throws IOException {
        double atMost = 0.4;
        Warning warning = warnings(plan(atMost)).get(0);
        TheisSolution theis = new TheisSolution(T, S);
        double crossed = 1;
        while (theis.drawdown(RATE, DISTANCE, crossed) < atMost) {
            crossed += 1;
        }
        double last = crossed;
        while (largestIfStopped(last) > atMost) {
            last -= 1;
        }
        assertTrue(crossed - last > 30, "late enough to matter: " + (crossed - last) + " d");
        assertEquals(crossed, warning.crossing().computed().getAsDouble(), 6);
        Warning.LastChance chance = warning.lastChance().orElseThrow();
        assertEquals(last, chance.day(), 16);
        Warning.WarningLevel watch = chance.levels().stream()
                .filter(level -> level.station().equals("watch"))
                .findFirst()
                .orElseThrow();
        assertEquals(130 - theis.drawdown(RATE, 1200, chance.day()), watch.head(), 0.01);
        assertTrue(watch.lowest() <= watch.head() && watch.head() <= watch.highest());
    }

    private static double theisReaches(double drawdown) {
        TheisSolution theis = new TheisSolution(T, S);
        double day = 1;
        while (theis.drawdown(RATE, DISTANCE, day) < drawdown) {
            day += 1;
        }
        return day;
    }

    /** A run that states an error of 0.05 m: drawdown may be beyond 0.4 m when it is 0.35 m, and surely is at 0.45 m. */
    @Test
    void datesAreAsUnsureAsTheLimitIs() throws IOException {
        RunPlan plan = plan(0.4);
        Path run = parent.resolve("run");
        StatedErrors stated = ran(plan);
        LimitResult computed = stated.limits().get(0);
        Outcome.Worst worst = computed.outcome().worstIfAny().orElseThrow();
        double ownDay = theisReaches(0.4) + 3;
        Outcome unsure = new Outcome.Undecided(
                "The margin is smaller than the numerical error.",
                OptionalDouble.of(ownDay),
                new Outcome.Worst(worst.day(), worst.value(), worst.margin(), 0.05));
        StatedErrors doubtful =
                new StatedErrors(stated.heads(), List.of(new LimitResult(computed.limit(), unsure)), true);
        Warning warning = new WarningStudy(plan, new RunFromResponses(plan, run), doubtful)
                .warnings()
                .get(0);
        assertEquals(theisReaches(0.35), warning.crossing().earliest().orElseThrow(), 6);
        assertEquals(ownDay, warning.crossing().computed().orElseThrow(), "the date of the run itself");
        assertEquals(theisReaches(0.45), warning.crossing().latest().orElseThrow(), 8);
        double last = theisReaches(0.35);
        while (largestIfStopped(last) > 0.35) {
            last -= 1;
        }
        Warning.LastChance chance = warning.lastChance().orElseThrow();
        assertEquals(last, chance.day(), 16, "acting has to prevent the earliest crossing");
        assertEquals(warning.crossing().earliest().orElseThrow() - chance.day(), chance.leadTime(), 1e-9);
    }

    private static RunPlan measured(RunPlan plan, List<Measurement> measurements) {
        RunDescription run = plan.description();
        return new RunPlan(
                new RunDescription(
                        run.title(),
                        run.purpose(),
                        run.datum(),
                        run.mapReference(),
                        run.calendar(),
                        run.endDay(),
                        run.provenance(),
                        run.aquifer(),
                        run.sealingBed(),
                        run.ground(),
                        run.stations(),
                        run.reportDates(),
                        measurements,
                        run.assumptions()),
                plan.problem(),
                plan.start(),
                plan.settings(),
                plan.stationDays(),
                plan.gridDays(),
                plan.limits(),
                false);
    }

    private static Measurement reading(double day, double below) {
        double head = 130 - new TheisSolution(T, S).drawdown(RATE, 1200, day);
        return new Measurement("watch", day, head - below, "head");
    }

    /** Readings 0.2, 0.3 and 0.4 m below the heads of Theis: their mean is 0.3 m, their standard deviation 0.1 m. */
    @Test
    void theBandHoldsTheScatterOfTheReadings() throws IOException {
        RunPlan plan = measured(plan(5), List.of(reading(200, 0.2), reading(400, 0.3), reading(600, 0.4)));
        Path folder = parent.resolve("run");
        new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(folder, true);
        RunFromResponses answers = new RunFromResponses(plan, folder);
        List<Double> errors = List.of(0.01, 0.02, 0.03);
        ExpectedBands bands =
                new ExpectedBands(plan.description(), answers.answer().orElseThrow(), errors);
        double head = 130 - new TheisSolution(T, S).drawdown(RATE, 1200, 730);
        ExpectedBand watch = bands.on("watch", 730);
        assertEquals(head - 0.3, watch.expected(), 0.01);
        assertEquals(2 * 0.1, watch.spread(), 0.01);
        assertEquals(watch.expected() - 0.03 - watch.spread(), watch.lowest(), 1e-9);
        assertEquals(watch.expected() + 0.03 + watch.spread(), watch.highest(), 1e-9);
        ExpectedBand far = bands.on("far", 730);
        assertEquals(far.computed(), far.expected(), "nothing says which way it errs");
        assertEquals(2 * Math.sqrt((0.04 + 0.09 + 0.16) / 3), far.spread(), 0.02);
        assertEquals(3 * 4, bands.yearly().size(), "three places, four first days of years");
        ExpectedBands alone =
                new ExpectedBands(plan(5).description(), answers.answer().orElseThrow(), errors);
        assertEquals(0, alone.on("watch", 730).spread());
    }

    private static Limit limit(String name, LimitedQuantity quantity, LimitPlace place, LimitPeriod period) {
        return new Limit(
                name, quantity, place, new Comparison.WithoutProposedBores(), period, OptionalDouble.empty(), "");
    }

    /** Of a place, a part of the map, a volume and what comes after taking there is nothing to watch. */
    @Test
    void limitsThatCannotBeMonitoredAreNamedWithTheReason() throws IOException {
        RunPlan one = plan(5);
        LimitPlace far = new LimitPlace.AtStation("far");
        LimitedQuantity drawdown = new LimitedQuantity.Drawdown(5);
        List<Limit> limits = List.of(
                one.limits().get(0),
                limit("spacing", new LimitedQuantity.Distance(500, List.of("pumped")), far, LimitPeriod.EVER),
                limit("everywhere", drawdown, new LimitPlace.OnMap("every cell"), LimitPeriod.EVER),
                limit("later", drawdown, far, LimitPeriod.EVER_AND_AFTER_TAKING),
                new Limit(
                        "beside today",
                        drawdown,
                        "far",
                        new Comparison.WithCase("existing as used"),
                        LimitPeriod.EVER,
                        ""));
        RunPlan plan = new RunPlan(
                one.description(),
                one.problem(),
                one.start(),
                one.settings(),
                one.stationDays(),
                one.gridDays(),
                limits,
                false);
        Path run = parent.resolve("run");
        StatedErrors stated = ran(one);
        WarningStudy study = new WarningStudy(plan, new RunFromResponses(plan, run), stated);
        assertEquals(
                List.of("far keeps its head"),
                study.warnings().stream().map(Warning::limit).toList());
        assertEquals(
                List.of("spacing (far)", "everywhere (every cell)", "later (far)", "beside today (far)"),
                study.leftOut().stream().map(UncountedLimit::limit).toList());
        assertTrue(study.leftOut().get(0).reason().contains("where bores stand"));
        assertTrue(study.leftOut().get(2).reason().contains("after taking stops"));
    }

    @Test
    void saysWhereNothingIsToBeDone() throws IOException {
        RunPlan plan = plan(5);
        Warning holds = warnings(plan).get(0);
        assertTrue(holds.crossing().earliest().isEmpty() && holds.lastChance().isEmpty());
        assertEquals("The limit is not crossed in the run.", holds.says());
        RunFromResponses answers = new RunFromResponses(plan, parent.resolve("run"));
        ExpectedBands bands =
                new ExpectedBands(plan.description(), answers.answer().orElseThrow(), List.of(0.0, 0.0, 0.0));
        List<UncountedLimit> leftOut = List.of(new UncountedLimit("spacing (far)", "is about where bores stand", ""));
        new WarningOutputs(List.of(holds), leftOut, bands, plan.description().calendar())
                .into(parent.resolve("monitor"), false);
        assertEquals(
                "spacing (far),is about where bores stand,",
                Files.readAllLines(parent.resolve("monitor").resolve("limits-not-counted.csv"))
                        .get(1));
        assertEquals(
                "far keeps its head,far,,,,pumped,,,The limit is not crossed in the run.",
                Files.readAllLines(parent.resolve("monitor").resolve("warnings.csv"))
                        .get(1));
    }
}

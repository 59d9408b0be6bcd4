package org.headfall.scenarios.capping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StartHeads;
import org.headfall.scenarios.run.SuperposedBalances;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two bores that flow by themselves, near to a spring and far from it, and a dry one; the simulator is the reference. */
class CappingStudyTest {

    private static final double HEAD = 130;

    @TempDir
    Path parent;

    private RunPlan plan;
    private FinishedRun simulated;

    @BeforeEach
    void run() throws IOException {
        plan = plan(true);
        simulated = new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(parent.resolve("run"), false);
    }

    /** The start is the same with and without the near bore shut: what is shut is so from the first day. */
    private static RunPlan plan(boolean nearFlows) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 500, 24), Axis.uniform(0, 500, 20));
        Aquifer aquifer = Aquifer.homogeneous(grid, 200, 2e-4);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        List<Bore> bores = List.of(
                flowing("near", 5250, 120, nearFlows),
                flowing("far", 10_250, 120, true),
                flowing("dry", 5750, 126.5, true));
        List<Station> stations = List.of(
                site("near", 5250, 120),
                site("far", 10_250, 120),
                site("dry", 5750, 126.5),
                new Station.SpringSite("Reed Spring", 4250, 5250, 125, 127, 20));
        return new RunPlan(
                SmallField.plainRun("Flowing", calendar, calendar.yearsAfter(0, 2), aquifer, stations),
                new FlowProblem(
                        aquifer,
                        Optional.empty(),
                        List.of(new OuterBoundary.FixedHead(
                                "west", SideSegment.whole(Side.WEST, grid), Schedule.constant(HEAD))),
                        List.of(),
                        List.of(new Spring("Reed Spring", 4250, 5250, 127, 20)),
                        bores),
                new StartHeads.Steady(Set.of()),
                Settings.DEFAULT,
                new double[] {30, 100},
                new double[0],
                List.of(),
                false);
    }

    private static Bore flowing(String name, double x, double outlet, boolean flows) {
        WellLoss loss = new WellLoss(0.004, 0);
        return new Bore(
                name,
                x,
                5250,
                0.1,
                loss,
                flows ? List.of(new OperatingPhase(0, new Operation.FreeFlow(outlet))) : List.of());
    }

    private static Station site(String name, double x, double outlet) {
        return SmallField.bore(name, x, 5250, OptionalDouble.of(outlet), OptionalDouble.empty(), false);
    }

    private static CappingStudy study(RunPlan plan, Path run) throws IOException {
        return new CappingStudy(
                plan, new RunFromResponses(plan, run), new SuperposedBalances(plan, SolutionMemory.heap()));
    }

    @Test
    void whatShuttingGivesIsThatOfTheSimulator() throws IOException {
        CappingStudy study = study(plan, parent.resolve("run"));
        ShutBore near = study.inOrder().stream()
                .filter(bore -> bore.name().equals("near"))
                .findFirst()
                .orElseThrow();
        FinishedRun shut =
                new ScenarioRun(plan(false), List.of(), (stage, fraction) -> {}).into(parent.resolve("shut"), false);
        for (Gain gain : near.gains()) {
            int station = plan.description().stationIndex(gain.station());
            StationSeries before = simulated.recording().series().get(station);
            StationSeries after = shut.recording().series().get(station);
            double expected = after.headAt(gain.day()) - before.headAt(gain.day());
            assertEquals(expected, gain.head(), 0.005 + 0.01 * expected, gain.toString());
        }
    }

    @Test
    void theBoreNearTheSpringComesFirstAndADryOneFlowsAgain() throws IOException {
        List<ShutBore> order = study(plan, parent.resolve("run")).inOrder();
        assertEquals("near", order.get(0).name());
        assertTrue(order.get(0).saved() > 0, "saved: " + order.get(0).saved());
        assertEquals(List.of("dry"), order.get(0).flowAgain());
        new CappingOutputs(order, plan.description().calendar()).into(Files.createDirectory(parent.resolve("capping")));
        List<String> lines = Files.readAllLines(parent.resolve("capping").resolve("capping-order.csv"));
        assertEquals(1 + 3, lines.size());
        assertTrue(lines.get(1).startsWith("1,near,"), lines.get(1));
    }

    /** Against the balances of two simulations, to 1 % of what is saved; the parts add up to it, to what their solver leaves. */
    @Test
    void savedWaterIsWhereTheSimulatorHasIt() throws IOException {
        ShutBore near = shut(study(plan, parent.resolve("run")), "near");
        FinishedRun shut =
                new ScenarioRun(plan(false), List.of(), (stage, fraction) -> {}).into(parent.resolve("shut"), false);
        double saved = volume(simulated, WaterBalance.Kind.BORE, "near");
        assertEquals(0, volume(shut, WaterBalance.Kind.BORE, "near"));
        assertEquals(saved, near.water().saved(), 0.01 * saved);
        assertEquals(saved / plan.description().endDay(), near.saved(), 0.01 * near.saved());
        double allowed = 0.01 * saved;
        assertEquals(more(shut, WaterBalance.Kind.STORAGE), near.water().inAquifer(), allowed);
        assertEquals(more(shut, WaterBalance.Kind.SPRING), near.water().atSprings(), allowed);
        assertEquals(more(shut, WaterBalance.Kind.BORE) + saved, near.water().atBores(), allowed);
        assertEquals(more(shut, WaterBalance.Kind.BOUNDARY), near.water().throughBoundaries(), allowed);
        assertTrue(
                near.water().inAquifer() > 0.001 * saved && near.water().atSprings() > 0.01 * saved, near.toString());
        assertEquals(0, near.water().inSealingBed());
        assertEquals(0, near.water().throughSealingBed());
        assertEquals(0, near.water().unaccounted(), 1e-6 * saved);
    }

    private double more(FinishedRun shut, WaterBalance.Kind kind) {
        return volume(shut, kind, "") - volume(simulated, kind, "");
    }

    /** What has left by all terms of a kind, or those of one name, less what has entered (m³). */
    private static double volume(FinishedRun run, WaterBalance.Kind kind, String name) {
        return run.recording().balances().stream()
                .flatMap(balance -> balance.terms().stream())
                .filter(term ->
                        term.kind() == kind && (name.isEmpty() || term.name().equals(name)))
                .mapToDouble(term -> term.outflow() - term.inflow())
                .sum();
    }

    private static ShutBore shut(CappingStudy study, String bore) {
        return study.inOrder().stream()
                .filter(one -> one.name().equals(bore))
                .findFirst()
                .orElseThrow();
    }

    /** By hand: no water can leave a closed box but by its only bore, so all that is not taken is still in it. */
    @Test
    void inAClosedBoxAllSavedWaterStays() throws IOException {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 5000, 24), Axis.uniform(0, 5000, 20));
        Aquifer aquifer = Aquifer.homogeneous(grid, 200, 2e-4);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        double[] heads = new double[grid.cellCount()];
        Arrays.fill(heads, HEAD);
        RunPlan box = new RunPlan(
                SmallField.plainRun(
                        "Box",
                        calendar,
                        calendar.yearsAfter(0, 2),
                        aquifer,
                        List.of(SmallField.bore(
                                "only", 52_500, 52_500, OptionalDouble.of(120), OptionalDouble.empty(), false))),
                new FlowProblem(
                        aquifer,
                        Optional.empty(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(new Bore(
                                "only",
                                52_500,
                                52_500,
                                0.1,
                                new WellLoss(0.004, 0),
                                List.of(new OperatingPhase(0, new Operation.FreeFlow(120)))))),
                new StartHeads.Given(heads),
                Settings.DEFAULT,
                new double[] {30, 100},
                new double[0],
                List.of(),
                false);
        new ScenarioRun(box, List.of(), (stage, fraction) -> {}).into(parent.resolve("box"), false);
        SavedWater water = shut(study(box, parent.resolve("box")), "only").water();
        double inBox = 24 * 5000.0 * 20 * 5000 * 2e-4 * (HEAD - 120);
        assertTrue(water.saved() > 0.01 * inBox && water.saved() < inBox, water + ", box " + inBox);
        assertEquals(water.saved(), water.inAquifer(), 1e-6 * water.saved());
        assertEquals(0, water.atBores() + water.atSprings() + water.throughBoundaries());
    }
}

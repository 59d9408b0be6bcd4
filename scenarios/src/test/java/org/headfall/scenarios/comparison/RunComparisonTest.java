package org.headfall.scenarios.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsException;
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

/** One bore in a field so wide that its rim is not felt in two years: drawdown is that of Theis (1935). */
class RunComparisonTest {

    private static final double T = 100;
    private static final double S = 1e-2;
    private static final double HEAD = 130;
    private static final double MIDDLE = 20_050;

    @TempDir
    Path parent;

    private FinishedRun run(String name, double rate, double cell) throws IOException {
        return run(name, rate, cell, 0, T, false);
    }

    private FinishedRun run(String name, double rate, double cell, double west, double transmissivity, boolean proposed)
            throws IOException {
        int cells = (int) (40_000 / cell);
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(west, cell, cells), Axis.uniform(0, cell, cells));
        Aquifer aquifer = Aquifer.homogeneous(grid, transmissivity, S);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        List<Station> stations = List.of(
                SmallField.bore("bore", west + MIDDLE, MIDDLE, OptionalDouble.of(125), OptionalDouble.of(60), proposed),
                new Station.ProtectedPoint("homestead", west + MIDDLE + 1000, MIDDLE, 100, OptionalDouble.empty()));
        RunDescription description = SmallField.plainRun(name, calendar, calendar.yearsAfter(0, 2), aquifer, stations);
        Bore bore = new Bore(
                "bore",
                west + MIDDLE,
                MIDDLE,
                0.1,
                WellLoss.NONE,
                List.of(new OperatingPhase(
                        0, new Operation.PumpedRate(Schedule.constant(rate), OptionalDouble.empty()))));
        RunPlan plan = new RunPlan(
                description,
                new FlowProblem(
                        aquifer,
                        Optional.empty(),
                        List.of(new OuterBoundary.FixedHead(
                                "west", SideSegment.whole(Side.WEST, grid), Schedule.constant(HEAD))),
                        List.of(),
                        List.of(),
                        List.of(bore)),
                new StartHeads.Steady(Set.of()),
                Settings.DEFAULT,
                new double[] {5},
                new double[0],
                List.of(),
                false);
        return new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(parent.resolve(name), false);
    }

    @Test
    void aRunComparedWithItselfDiffersInNothing() throws IOException {
        FinishedRun run = run("one", 800, 400);
        RunComparison comparison = new RunComparison(run, run);
        assertEquals(3, comparison.maps().size());
        for (MapDifference map : comparison.maps()) {
            for (double lower : map.lowerBy()) {
                assertEquals(0, lower);
            }
        }
        comparison.stations().forEach(station -> assertEquals(0, station.lowerBy()));
        assertTrue(comparison.affected(List.of(1e-9)).isEmpty());
    }

    /** The area within which drawdown by 800 m³/d is 1 m more than by none is a circle whose radius follows from Theis. */
    @Test
    void theAffectedAreaIsTheCircleOfTheis() throws IOException {
        RunComparison comparison = new RunComparison(run("idle", 0, 200), run("pumped", 800, 200));
        TheisSolution theis = new TheisSolution(T, S);
        MapDifference last = comparison.maps().get(2);
        double radius = 100;
        while (theis.drawdown(800, radius, last.day()) > 1) {
            radius += 1;
        }
        double area = AffectedArea.of(comparison.first().description().grid(), last.lowerBy(), 1)
                .getArea();
        assertEquals(Math.PI * radius * radius, area, 0.03 * area);
        StationDifference point = comparison.stations().get(5);
        assertEquals("homestead", point.station());
        double expected = theis.drawdown(800, 1000, last.day());
        assertEquals(expected, point.lowerBy(), 0.005 * expected);
    }

    @Test
    void saysWhatItMeansForABore() throws IOException {
        RunComparison comparison = new RunComparison(run("idle", 0, 400), run("pumped", 800, 400));
        List<AffectedPlace> affected = comparison.affected(List.of(2.0));
        assertEquals("bore", affected.get(0).station());
        String meaning = affected.get(0).meaning();
        assertTrue(meaning.startsWith("stops flowing by itself on 2027-07-0"), meaning);
        assertTrue(
                meaning.contains("in the first run not; takes 9.3 L/s more itself, which is part of the cause"),
                meaning);
        assertTrue(meaning.contains("above the pump intake instead of 70.0 m"), meaning);
        assertTrue(affected.stream().noneMatch(place -> place.meaning().isBlank()), affected::toString);
    }

    @Test
    void aProposedBoreIsTheCauseAndNotAffected() throws IOException {
        RunComparison comparison = new RunComparison(run("idle", 0, 400), run("pumped", 800, 400, 0, T, true));
        assertEquals(List.of("bore"), comparison.proposedBores());
        List<AffectedPlace> affected = comparison.affected(List.of(0.5));
        assertEquals("homestead", affected.get(0).station());
        assertTrue(affected.stream().noneMatch(place -> place.station().equals("bore")), affected::toString);
    }

    /** Cells that are smaller around other bores make no other field. */
    @Test
    void namesWhatTheFieldsDifferIn() throws IOException {
        FinishedRun first = run("first", 0, 400);
        assertEquals(List.of(), new RunComparison(first, run("pumped", 800, 400)).differentFields());
        assertEquals(List.of(), new RunComparison(first, run("narrow", 800, 200)).differentFields());
        assertEquals(
                List.of("transmissivity (in 100 % of the cells)"),
                new RunComparison(first, run("another", 0, 400, 0, 1.01 * T, false)).differentFields());
        List<String> shifted = new RunComparison(first, run("shifted", 0, 400, 8_000, T, false)).differentFields();
        assertEquals(
                "extent of the grid (x 0.0 to 40.0 km, y 0.0 to 40.0 km and x 8.0 to 48.0 km, y 0.0 to 40.0 km)",
                shifted.get(0));
        assertEquals("places with the same name (bore, homestead)", shifted.get(1));
    }

    /** Runs without unit responses do not tell what their boundaries and recharge were. */
    @Test
    void whatIsNotKnownIsNotTakenForTheSame() throws IOException {
        FinishedRun run = run("one", 0, 400);
        assertEquals(
                List.of("heads and flows of the boundaries", "kinds and places of the boundaries", "recharge"),
                new RunComparison(run, run).fieldsNotCompared());
    }

    @Test
    void fieldsApartAreRefused() throws IOException {
        FinishedRun first = run("here", 0, 400);
        FinishedRun second = run("there", 0, 400, 100_000, T, false);
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> new RunComparison(first, second));
        assertTrue(String.valueOf(e.getMessage()).contains("no part of the map in common"), e.getMessage());
    }

    /** Between cells of another width heads are bilinear, which is exact for the level heads of a field at rest. */
    @Test
    void gridsOfDifferentCellsAreBroughtTogether() throws IOException {
        RunComparison comparison = new RunComparison(run("wide", 0, 400), run("narrow", 800, 200));
        MapDifference last = comparison.maps().get(2);
        RectilinearGrid grid = comparison.first().description().grid();
        int cell = grid.locate(MIDDLE + 3000, MIDDLE);
        TheisSolution theis = new TheisSolution(T, S);
        double distance = Math.hypot(
                grid.x().centres()[cell % grid.columns()] - MIDDLE, grid.y().centres()[cell / grid.columns()] - MIDDLE);
        double expected = theis.drawdown(800, distance, last.day());
        assertEquals(expected, last.lowerBy()[cell], 0.01 * expected);
    }

    @Test
    void writesAFolderAndKeepsAForeignOne() throws IOException {
        RunComparison comparison = new RunComparison(run("idle", 0, 400), run("pumped", 800, 400));
        ComparisonOutputs outputs = new ComparisonOutputs(comparison, List.of(1.0));
        Path folder = parent.resolve("comparison");
        outputs.into(folder, false);
        List<String> stations = Files.readAllLines(folder.resolve("compared-stations.csv"));
        assertEquals(1 + 2 * 3, stations.size());
        assertTrue(Files.exists(folder.resolve("lower-by-2029-07-01.tif")));
        assertTrue(Files.readString(folder.resolve("compared-runs.csv")).contains("title,idle,pumped,\r\n"));
        String areas = Files.readString(folder.resolve("affected-areas.geojson"));
        assertTrue(areas.contains("[19600,"), "not in the metres of the local grid: " + areas);
        assertThrows(ResultsException.class, () -> outputs.into(folder, false));
        outputs.into(folder, true);
        Files.writeString(folder.resolve("notes.txt"), "mine");
        assertThrows(ResultsException.class, () -> outputs.into(folder, true));
        assertEquals("mine", Files.readString(folder.resolve("notes.txt")));
    }
}

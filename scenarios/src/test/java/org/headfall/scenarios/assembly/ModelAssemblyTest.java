package org.headfall.scenarios.assembly;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ModelAssemblyTest {
    private static final String DOCUMENT = """
            title: strip
            datum: metres above an invented datum
            crs: local
            period: {from: 2027-01-01, until: 2030-01-01}
            grid:
              extent: {west: 0 km, east: 20 km, south: 0 km, north: 8 km}
              cell: 1 km
            aquifer:
              transmissivity: 300 m2/d
              storativity: 2e-4
              top: -100 m
              bottom: -200 m
            ground: 150 m
            boundaries:
              - {name: intake, side: west, fixed_head: 200 m}
              - {name: outfall, side: east, fixed_head: 100 m}
            start: {steady: with existing bores}
            """;

    @TempDir
    Path folder;

    private final Problems problems = new Problems();

    private Scenario scenario(String document) throws IOException, InputException {
        Path file = Files.writeString(folder.resolve("strip.yaml"), document);
        return ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT).orThrow();
    }

    private Model model(String document) throws IOException, InputException {
        Optional<Model> model = ModelAssembly.assemble(scenario(document), problems, 1);
        assertTrue(model.isPresent(), problems::toText);
        return model.get();
    }

    /** Between two fixed heads steady head falls in a straight line: exact on the grid for constant T. */
    @Test
    void theSolverFindsTheStraightLineBetweenTwoFixedHeads() throws Exception {
        Model model = model(DOCUMENT);
        Model.SteadyHeads start = assertInstanceOf(Model.SteadyHeads.class, model.start());
        double[] head = new Simulation(start.problem(), model.settings()).steadyHead(0);
        RectilinearGrid grid = model.problem().aquifer().grid();
        for (int cell = 0; cell < head.length; cell++) {
            assertEquals(200 - grid.centreX(cell) / 200, head[cell], 1e-6, "cell " + cell);
        }
        assertEquals(1096, model.days());
    }

    @Test
    void theRatioOfTransmissivitiesKeepsTheirMean() throws Exception {
        Model model = model(DOCUMENT.replace("300 m2/d\n", "300 m2/d\n  x_over_y: 4\n"));
        assertEquals(600, model.problem().aquifer().transmissivityX()[7], 1e-9);
        assertEquals(150, model.problem().aquifer().transmissivityY()[7], 1e-9);
    }

    @Test
    void bothDirectionsMayBeGiven() throws Exception {
        Model model = model(DOCUMENT.replace("300 m2/d\n", "{x: 300 m2/d, y: 75 m2/d}\n"));
        assertEquals(300, model.problem().aquifer().transmissivityX()[0]);
        assertEquals(75, model.problem().aquifer().transmissivityY()[0]);
    }

    @Test
    void rastersAreConvertedAndPutOnCells() throws Exception {
        StringBuilder raster = new StringBuilder("ncols 20\nnrows 8\nxllcorner 0\nyllcorner 0\ncellsize 1000\n");
        for (int row = 7; row >= 0; row--) {
            for (int column = 0; column < 20; column++) {
                raster.append(-10 * row - column).append(' ');
            }
            raster.append('\n');
        }
        Files.writeString(folder.resolve("top.asc"), raster);
        Model model = model(DOCUMENT.replace("top: -100 m", "top: {raster: top.asc, unit: cm}"));
        for (int cell = 0; cell < 160; cell++) {
            int row = cell / 20;
            double expected = -0.1 * row - 0.01 * (cell % 20);
            assertEquals(expected, model.problem().aquifer().top()[cell], 1e-12, "cell " + cell);
        }
    }

    @Test
    void aBottomAboveTheTopIsReportedWithTheCell() throws Exception {
        String rows = ("-50 ".repeat(20) + "\n").repeat(7) + "-50 ".repeat(19) + "-250\n";
        Files.writeString(
                folder.resolve("top.asc"), "ncols 20\nnrows 8\nxllcorner 0\nyllcorner 0\ncellsize 1000\n" + rows);
        Scenario scenario = scenario(DOCUMENT.replace("top: -100 m", "top: {raster: top.asc}"));
        assertTrue(ModelAssembly.assemble(scenario, problems, 1).isEmpty());
        assertTrue(
                problems.toText().contains("below the top in 1 cell, the first at x 19500, y 500: bottom -200 m"),
                problems::toText);
    }

    @Test
    void stretchesOfSidesBecomeRunsOfCells() throws Exception {
        Model model = model(DOCUMENT.replace("side: east,", "side: east, from: 2 km, to: 5 km,")
                .replace("side: west, fixed_head: 200 m", "side: west, far_head: 200 m, distance: 60 km"));
        assertEquals(
                new OuterBoundary.FixedHead("outfall", new SideSegment(Side.EAST, 2, 4), Schedule.constant(100)),
                model.problem().boundaries().get(1));
        assertEquals(
                new OuterBoundary.FarHead("intake", new SideSegment(Side.WEST, 0, 7), Schedule.constant(200), 60_000),
                model.problem().boundaries().get(0));
    }

    @Test
    void aStretchWithoutACellIsReportedAtItsBoundary() throws Exception {
        Scenario scenario = scenario(DOCUMENT.replace("side: east,", "side: east, from: 2.1 km, to: 2.2 km,"));
        assertTrue(ModelAssembly.assemble(scenario, problems, 1).isEmpty());
        assertEquals("strip.yaml:16:5", problems.sorted().get(0).place().toString());
    }

    @Test
    void boresGetDaysOfThePeriodAndRefinedCells() throws Exception {
        Files.writeString(folder.resolve("rates.csv"), "date,rate (L/s)\n2026-01-01,10\n2027-01-31,20\n");
        Model model =
                model(DOCUMENT.replace("cell: 1 km", "cell: 1 km\n  refine: {around: bores, down_to: 20 m}") + """
                bores:
                  - {name: A, at: [5210 m, 3 km], group: existing, screen_radius: 0.1 m, rate: {file: rates.csv},
                     pump_intake_level: 20 m, changes: [{from: 2028-03-01, operation: free flow}], outlet_level: 151 m}
                  - {name: B, at: [9 km, 3 km], group: proposed, screen_radius: 0.1 m, rate: 5 L/s, lowest_level: 30 m}
                """);
        Bore bore = model.problem().bores().get(0);
        Operation.PumpedRate pumped = assertInstanceOf(
                Operation.PumpedRate.class, bore.phases().get(0).operation());
        assertEquals(OptionalDouble.of(20), pumped.lowestLevel());
        assertArrayEquals(new double[] {-365, 30}, pumped.rate().jumps());
        assertEquals(864, pumped.rate().at(0), 1e-9);
        assertEquals(1728, pumped.rate().at(30), 1e-9);
        assertEquals(425, bore.phases().get(1).fromDay());
        assertEquals(new Operation.FreeFlow(151), bore.phases().get(1).operation());
        RectilinearGrid grid = model.problem().aquifer().grid();
        int column = grid.x().locate(5210);
        assertEquals(20, grid.x().width(column), 1e-9);
        assertEquals(5210, grid.x().centre(column), 1e-9);
        assertEquals(20_000, grid.x().end());
        Model.SteadyHeads start = assertInstanceOf(Model.SteadyHeads.class, model.start());
        assertEquals(List.of(bore), start.problem().bores());
    }

    @Test
    void rechargeThatChangesMultipliesACoverOfOne() throws Exception {
        Files.writeString(folder.resolve("rain.csv"), "date,rate (mm/yr)\n2026-01-01,365.25\n2028-01-01,0\n");
        Model model = model(DOCUMENT + "recharge:\n  - {name: rain, rate: {file: rain.csv}}\n"
                + "  - {name: mist, rate: 36.525 mm/yr}\n");
        assertEquals(1, model.problem().recharges().get(0).rate()[11]);
        assertEquals(1e-3, model.problem().recharges().get(0).factor().at(0), 1e-15);
        assertEquals(0, model.problem().recharges().get(0).factor().at(365));
        assertEquals(1e-4, model.problem().recharges().get(1).rate()[11], 1e-15);
    }

    @Test
    void outputDaysFollowTheCalendar() throws Exception {
        String leap = DOCUMENT.replace("from: 2027-01-01, until: 2030-01-01", "from: 2028-02-29, until: 2033-03-01");
        Model model = model(leap);
        assertArrayEquals(
                new double[] {0, 365, 730, 1095, 1461, 1826, 1827},
                model.outputDays().grids());
        assertArrayEquals(
                new double[] {0, 1, 32, 62}, Arrays.copyOf(model.outputDays().stations(), 4));
        assertEquals(1827, model.outputDays().stations()[model.outputDays().stations().length - 1]);
    }

    @Test
    void stationsAreRecordedMonthlyAndWhereABoreChangesWhateverIsAskedFor() throws Exception {
        Model model = model(DOCUMENT + """
                output: {bores: yearly}
                bores:
                  - {name: A, at: [5 km, 3 km], group: proposed, screen_radius: 0.1 m, rate: 5 L/s,
                     season: {from: 10 March, to: 19 March}}
                """);
        // 1 January, 1 February, 1 March, 10 March, 20 March, 1 April 2027
        assertArrayEquals(
                new double[] {0, 31, 59, 68, 78, 90},
                Arrays.copyOf(model.outputDays().stations(), 6));
        assertEquals(36 + 1 + 6, model.outputDays().stations().length);
    }

    @Test
    void tooManyCellsAfterRefinementAreReported() throws Exception {
        StringBuilder document = new StringBuilder(
                DOCUMENT.replace("cell: 1 km", "cell: 1 km\n  refine: {around: bores, down_to: 1 cm, growth: 1.01}"));
        document.append("bores:\n");
        for (int i = 1; i <= 10; i++) {
            document.append(String.format(
                    Locale.ROOT,
                    "  - {name: B%d, at: [%d km, %d m], group: proposed, screen_radius: 0.1 m, rate: 1 L/s}%n",
                    i,
                    i,
                    700 * i));
        }
        assertTrue(ModelAssembly.assemble(scenario(document.toString()), problems, 1)
                .isEmpty());
        assertEquals("strip.yaml:6:3", problems.sorted().get(0).place().toString());
    }
}

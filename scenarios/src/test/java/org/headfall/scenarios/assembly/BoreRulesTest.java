package org.headfall.scenarios.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.PartialPenetration;
import org.headfall.solver.bore.WaterColumn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a document says of losses, pumps, hot water and seasons, down to the bore of the solver. */
class BoreRulesTest {
    private static final String DOCUMENT = """
            title: strip
            datum: metres above an invented datum
            crs: local
            period: {from: 2027-01-01, until: 2029-01-01}
            grid:
              extent: {west: 0 km, east: 20 km, south: 0 km, north: 8 km}
              cell: 1 km
            aquifer: {transmissivity: 300 m2/d, storativity: 2e-4, top: -100 m, bottom: -200 m}
            ground: 150 m
            boundaries:
              - {name: intake, side: west, fixed_head: 200 m}
            start: {steady: without bores}
            bores:
            """;

    @TempDir
    Path folder;

    private ScenarioReading read(String bores) throws IOException {
        Path file = Files.writeString(folder.resolve("strip.yaml"), DOCUMENT + bores);
        return ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT);
    }

    private Bore bore(String keys) throws IOException, InputException {
        Problems problems = new Problems();
        Optional<Model> model = ModelAssembly.assemble(read(oneBore(keys)).orThrow(), problems, 1);
        assertTrue(model.isPresent(), problems::toText);
        return model.get().problem().bores().get(0);
    }

    private static String oneBore(String keys) {
        return "  - name: Mulga 3\n    at: [5 km, 4 km]\n    group: proposed\n    screen_radius: 0.1 m\n"
                + keys.indent(4);
    }

    private void assertProblem(String expected, String bores) throws IOException {
        String text = read(bores).problems().toText();
        assertTrue(text.contains(expected), text);
    }

    /** C = loss / rate^p: 3 m at 1,000 m³/d with p = 2.5. */
    @Test
    void turbulentLossAtOneRate() throws Exception {
        Bore bore = bore(
                "operation: off\nwell_loss: {linear: 1e-4 d/m2, turbulent: {loss: 3 m, at_rate: 1 ML/d, exponent: 2.5}}");
        assertEquals(3 + 0.1, bore.wellLoss().at(1000), 1e-12);
        assertEquals(2.5, bore.wellLoss().exponent());
    }

    @Test
    void skinIsThatOfTheWallAndOfTheShortScreen() throws Exception {
        Bore bore = bore(
                "operation: off\nskin: 2\n" + "screen: {top: -110 m, bottom: -150 m, vertical_over_horizontal: 0.1}");
        assertEquals(2 + new PartialPenetration(0.1, 0.5, 100, 0.1).skin(0.1), bore.skin(), 1e-12);
        assertEquals(
                0, bore("operation: off\nscreen: {top: -110 m, bottom: -150 m}").skin());
    }

    /** The outlet stays as it was given; hot water and friction go to the solver beside it. */
    @Test
    void casingAndHotWaterOfAFreeFlowingBore() throws Exception {
        Bore bore = bore("""
                operation: free flow
                outlet_level: 151 m
                screen: {top: -110 m, bottom: -150 m}
                water_temperature: {wellhead: 50 degC, screen: 70 degC}
                casing: {diameter: 150 mm, length: 260 m, roughness: 0.1 mm}
                """);
        assertEquals(new WaterColumn(50, 70, -130), bore.column());
        Operation.FreeFlow flow = assertInstanceOf(Operation.FreeFlow.class, bore.operationAt(0));
        assertEquals(151, flow.outletLevel());
        // 60 degC: 0.466 mPa s (CRC Handbook, from memory) over 983.2 kg/m3.
        double viscosity = flow.casing().orElseThrow().viscosity() / 86_400;
        assertEquals(0.466e-3 / 983.2, viscosity, 0.003 * viscosity);
        assertEquals(0.15, flow.casing().orElseThrow().diameter(), 1e-15);
    }

    @Test
    void pumpCurveInTheDocumentAndInATable() throws Exception {
        Files.writeString(folder.resolve("pump.csv"), "flow (L/s),head (m),power (kW)\n0,90,4\n10,82,9\n20,55,12\n");
        String rest = "delivery_level: 165 m, delivery_head: 12 m, "
                + "riser: {diameter: 125 mm, length: 90 m, roughness: 0.05 mm}}\nlowest_level: 60 m";
        Operation listed = bore("pump: {curve: [[0 L/s, 90 m], [10 L/s, 82 m], [20 L/s, 55 m]], " + rest)
                .operationAt(0);
        Operation tabled = bore("pump: {curve: pump.csv, " + rest).operationAt(0);
        assertEquals(listed, tabled);
        Operation.PumpedByCurve pump = assertInstanceOf(Operation.PumpedByCurve.class, listed);
        assertEquals(177, pump.deliveryLevel());
        assertEquals(82, pump.curve().head(864), 1e-9);
        assertEquals(OptionalDouble.of(60), pump.lowestLevel());
    }

    /** Days by the calendar from 1 January 2027: 1 October is day 273, 1 April of the next year day 456. */
    @Test
    void aSeasonSwitchesOnAndOffEveryYear() throws Exception {
        Bore bore = bore("rate: 10 L/s\nseason: {from: 1 October, to: 31 March}\nchanges:\n"
                + "  - {from: 2028-12-01, operation: capped}");
        String phases = bore.phases().stream()
                .filter(phase -> phase.fromDay() >= 0)
                .map(BoreRulesTest::words)
                .collect(Collectors.joining(" "));
        assertEquals("90 off 273 on 456 off 639 on 700 off", phases);
        assertInstanceOf(Operation.PumpedRate.class, bore.operationAt(0));
        assertInstanceOf(Operation.Off.class, bore.operationAt(-200));
    }

    private static String words(OperatingPhase phase) {
        return (long) phase.fromDay() + (phase.operation() instanceof Operation.Off ? " off" : " on");
    }

    @Test
    void aBoreDrilledWithinItsSeasonBeginsOnThatDay() throws Exception {
        Bore bore = bore("rate: 10 L/s\nfrom: 2027-02-01\nseason: {from: 1 Oct, to: 31 Mar}");
        assertInstanceOf(Operation.Off.class, bore.operationAt(30));
        assertInstanceOf(Operation.PumpedRate.class, bore.operationAt(31));
        assertInstanceOf(Operation.Off.class, bore.operationAt(90));
    }

    @Test
    void aTableSaysTheSame() throws Exception {
        Files.writeString(
                folder.resolve("bores.csv"),
                "name,x (km),y (km),group,screen_radius (m),outlet_level (m),skin,screen_top (m),screen_bottom (m),"
                        + "vertical_over_horizontal,casing_diameter (mm),casing_length (m),casing_roughness (mm),"
                        + "water_temperature,operation,season_from,season_to\n"
                        + "Mulga 3,5,4,proposed,0.1,151,2,-110,-150,0.1,150,260,0.1,60 degC,free flow,1 Oct,31 March\n");
        Problems problems = new Problems();
        Optional<Model> model =
                ModelAssembly.assemble(read("  - {file: bores.csv}\n").orThrow(), problems, 1);
        Bore table = model.orElseThrow().problem().bores().get(0);
        Bore document = bore("""
                outlet_level: 151 m
                skin: 2
                screen: {top: -110 m, bottom: -150 m, vertical_over_horizontal: 0.1}
                casing: {diameter: 150 mm, length: 260 m, roughness: 0.1 mm}
                water_temperature: 60 degC
                operation: free flow
                season: {from: 1 October, to: 31 March}
                """);
        assertEquals(document.column(), table.column());
        assertEquals(document.skin(), table.skin(), 1e-12);
        assertEquals(
                document.phases().stream().map(OperatingPhase::fromDay).toList(),
                table.phases().stream().map(OperatingPhase::fromDay).toList());
        Operation.FreeFlow flow = assertInstanceOf(Operation.FreeFlow.class, table.operationAt(0));
        assertEquals(0.15, flow.casing().orElseThrow().diameter(), 1e-15);
    }

    private static final String PUMP_COLUMNS =
            "name,x (km),y (km),group,screen_radius (m),lowest_level (m),pump_curve,delivery_level (m),delivery_head (m),"
                    + "riser_diameter (mm),riser_length (m),riser_roughness (mm),linear_well_loss (d/m2),"
                    + "turbulent_loss (m),turbulent_loss_rate (ML/d),well_loss_exponent,operation\n";

    private String tabled(String row) throws IOException {
        Files.writeString(folder.resolve("pump.csv"), "flow (L/s),head (m)\n0,90\n10,82\n20,55\n");
        Files.writeString(folder.resolve("bores.csv"), PUMP_COLUMNS + row + "\n");
        return "  - {file: bores.csv}\n";
    }

    @Test
    void aTableSaysTheSameOfPumpsAndExponents() throws Exception {
        Problems problems = new Problems();
        String bores = tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,165,12,125,90,0.05,1e-4,3,1,2.5,");
        Bore table = ModelAssembly.assemble(read(bores).orThrow(), problems, 1)
                .orElseThrow()
                .problem()
                .bores()
                .get(0);
        Bore document = bore("""
                pump:
                  curve: [[0 L/s, 90 m], [10 L/s, 82 m], [20 L/s, 55 m]]
                  delivery_level: 165 m
                  delivery_head: 12 m
                  riser: {diameter: 125 mm, length: 90 m, roughness: 0.05 mm}
                lowest_level: 60 m
                well_loss: {linear: 1e-4 d/m2, turbulent: {loss: 3 m, at_rate: 1 ML/d, exponent: 2.5}}
                """);
        assertEquals(document.operationAt(0), table.operationAt(0));
        assertEquals(document.wellLoss(), table.wellLoss());
    }

    @Test
    void faultsOfPumpsAndExponentsInATableAreNamed() throws Exception {
        assertProblem("pump_curve without delivery_level", tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,,,,,,,,,,"));
        assertProblem("delivery_head without pump_curve", tabled("Mulga 3,5,4,proposed,0.1,60,,,12,,,,,,,,off"));
        assertProblem("pump_curve", tabled("Mulga 3,5,4,proposed,0.1,60,pumps.csv,165,,,,,,,,,"));
        assertProblem("only riser_length", tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,165,,,90,,,,,,"));
        assertProblem(
                "a twentieth of the diameter", tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,165,,125,90,50,,,,,"));
        assertProblem(
                "only turbulent_loss, well_loss_exponent", tabled("Mulga 3,5,4,proposed,0.1,60,,,,,,,,3,,2.5,off"));
        assertProblem("well_loss_exponent", tabled("Mulga 3,5,4,proposed,0.1,60,,,,,,,,3,1,9,off"));
        assertProblem("operation and pump_curve", tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,165,,,,,,,,,off"));
        String bores = tabled("Mulga 3,5,4,proposed,0.1,60,pump.csv,165,,,,,,,,,");
        Files.writeString(folder.resolve("pump.csv"), "flow (L/s),head (m)\n0,90\n10,95\n20,85\n");
        assertProblem("pump.csv:3:4", bores);
    }

    @Test
    void aPumpCurveThatRisesIsNamedWithPlaceAndValue() throws Exception {
        String bores =
                oneBore("pump:\n  curve: [[0 L/s, 90 m], [10 L/s, 82 m], [20 L/s, 85 m]]\n  delivery_level: 1 m");
        assertProblem("strip.yaml:19:55", bores);
        assertProblem("85 m after 82 m in point 3", bores);
        Files.writeString(folder.resolve("pump.csv"), "flow (L/s),head (m)\n0,90\n10,95\n20,85\n");
        assertProblem("pump.csv:3:4", oneBore("pump: {curve: pump.csv, delivery_level: 1 m}"));
        Files.writeString(folder.resolve("pump.csv"), "flow (ML/d),head (m)\n0,90\n1.5,82\n1.2,80\n");
        assertProblem("1.2 ML/d after 1.5 ML/d in point 3", oneBore("pump: {curve: pump.csv, delivery_level: 1 m}"));
        Files.writeString(folder.resolve("pump.csv"), "flow (L/s),head (m)\n0,90\n-2,82\n3,80\n");
        assertProblem("found -2 L/s; allowed: at least 0 L/s", oneBore("pump: {curve: pump.csv, delivery_level: 1 m}"));
    }

    @Test
    void otherFaultsOfCurvesAreNamed() throws Exception {
        assertProblem(
                "at least 3 points", oneBore("pump: {curve: [[0 L/s, 90 m], [1 L/s, 80 m]], delivery_level: 1 m}"));
        assertProblem(
                "a first point at no flow",
                oneBore("pump: {curve: [[1 L/s, 90 m], [2 L/s, 80 m], [3 L/s, 8 m]], delivery_level: 1 m}"));
        assertProblem(
                "flows that increase",
                oneBore("pump: {curve: [[0 L/s, 90 m], [2 L/s, 80 m], [2 L/s, 8 m]], delivery_level: 1 m}"));
        assertProblem(
                "flow and head, such as",
                oneBore("pump: {curve: [[0 L/s, 90 m], 5 m, [3 L/s, 8 m]], delivery_level: 1 m}"));
    }

    @Test
    void faultsOfTheCompletionAreNamed() throws Exception {
        List<List<String>> cases = List.of(
                List.of("screen, on which the column", "operation: off\nwater_temperature: 60 degC"),
                List.of(
                        "at most 110 degC",
                        "operation: off\nscreen: {top: 0 m, bottom: -9 m}\n" + "water_temperature: 140 degC"),
                List.of(
                        "found 6 mm; allowed: at least 0 mm and at most 5 mm, a twentieth of the diameter",
                        "operation: off\n" + "casing: {diameter: 100 mm, length: 10 m, roughness: 6 mm}"),
                List.of(
                        "screen.bottom -110 m above screen.top -150 m",
                        "operation: off\n" + "screen: {top: -150 m, bottom: -110 m}"),
                List.of(
                        "quadratic and turbulent",
                        "operation: off\nwell_loss: {quadratic: 1900 s2/m5, "
                                + "turbulent: {loss: 1 m, at_rate: 1 L/s, exponent: 2.5}}"),
                List.of(
                        "at least 1 and at most 4",
                        "operation: off\n" + "well_loss: {turbulent: {loss: 1 m, at_rate: 1 L/s, exponent: 5}}"),
                List.of("a day and a month", "rate: 1 L/s\nseason: {from: 31 June, to: 1 July}"),
                List.of("rate and pump", "rate: 1 L/s\npump: {curve: a.csv, delivery_level: 1 m}"));
        for (List<String> each : cases) {
            assertProblem(each.get(0), oneBore(each.get(1)));
        }
    }

    @Test
    void aScreenBeyondTheAquiferIsNamed() throws Exception {
        Problems problems = new Problems();
        String keys = "operation: off\nscreen: {top: -90 m, bottom: -150 m, vertical_over_horizontal: 0.1}";
        ModelAssembly.assemble(read(oneBore(keys)).orThrow(), problems, 1);
        assertTrue(problems.toText().contains("here from -100 m down to -200 m"), problems::toText);
    }
}

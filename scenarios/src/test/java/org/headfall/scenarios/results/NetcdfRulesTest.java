package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** The rules that both NetCDF files follow, read back through NetCDF-Java. */
class NetcdfRulesTest {

    private static final List<String> UNITS =
            List.of("degrees_north", "degrees_east", "m", "m2 d-1", "m3", "m3 d-1", "m d-1", "m-1", "1");

    @TempDir
    Path folder;

    private final RunDescription description = SmallField.description();
    private Path heads;
    private Path bores;

    @BeforeEach
    void writeBoth() throws IOException {
        heads = folder.resolve("heads.nc");
        bores = folder.resolve("bores.nc");
        write(folder, description);
    }

    /** Writes both files with records at day 0, 30, the first report date and the end; day 30 has no grid. */
    static void write(Path folder, RunDescription description) throws IOException {
        double year = description.reportDates().get(0).day();
        RecordPlan plan = RecordPlan.of(description, new double[] {30}, new double[] {year});
        try (HeadsFile headsFile = new HeadsFile(folder.resolve("heads.nc"), description, Instant.EPOCH);
                BoresFile boresFile = new BoresFile(folder.resolve("bores.nc"), description, Instant.EPOCH)) {
            Recorder recorder = new Recorder(description, List.of(), plan, List.of(headsFile, boresFile));
            recorder.recorded(SmallField.snapshot(0, 0, 0));
            recorder.recorded(SmallField.snapshot(30, 0, 1.25));
            recorder.recorded(SmallField.snapshot(year, 30, 200));
            recorder.recorded(SmallField.snapshot(description.endDay(), year, 3));
            headsFile.complete();
            boresFile.complete();
        }
    }

    @Test
    void headAndDrawdownHoldTheRecordsAndFillInactiveCells() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(heads.toString())) {
            float[] head = (float[]) variable(file, "hydraulic_head").read().copyTo1DJavaArray();
            float[] drawdown = (float[]) variable(file, "drawdown").read().copyTo1DJavaArray();
            assertEquals(3 * 12, head.length);
            assertEquals(120.5f, head[5]);
            assertEquals(-79.5f, head[12 + 5]);
            assertEquals(0f, drawdown[5]);
            assertEquals(3f, drawdown[24 + 5]);
            assertEquals(GrowingFile.FLOAT_FILL, head[12 + SmallField.INACTIVE]);
            assertEquals(GrowingFile.FLOAT_FILL, drawdown[SmallField.INACTIVE]);
        }
    }

    @Test
    void notConfinedSinceIsTheFirstRecordBelowTheTop() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(heads.toString())) {
            double[] since =
                    (double[]) variable(file, "not_confined_since").read().copyTo1DJavaArray();
            assertEquals(description.reportDates().get(0).day(), since[0]);
            assertEquals(GrowingFile.DOUBLE_FILL, since[SmallField.INACTIVE]);
        }
    }

    @Test
    void balanceOfAGridPeriodSumsAllPeriodsInIt() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(heads.toString())) {
            double[] inflow = (double[]) variable(file, "balance_inflow").read().copyTo1DJavaArray();
            double[] outflow =
                    (double[]) variable(file, "balance_outflow").read().copyTo1DJavaArray();
            double[] discrepancy =
                    (double[]) variable(file, "balance_discrepancy").read().copyTo1DJavaArray();
            double year = description.reportDates().get(0).day();
            assertEquals(GrowingFile.DOUBLE_FILL, inflow[0]);
            assertEquals(10 * 30 + 10 * year, inflow[4], 1e-9);
            assertEquals(14, outflow[4 + 3], 1e-12);
            assertEquals(10 * 30 + 10 * year + 4 - 2 - 8 - 14, discrepancy[1], 1e-9);
        }
    }

    @Test
    void timeAndCoordinatesIncreaseAndBoundsLieAroundTheCentres() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(heads.toString())) {
            for (String name : List.of("x", "y", "time")) {
                double[] values = (double[]) variable(file, name).read().copyTo1DJavaArray();
                String bounds = text(variable(file, name), "bounds");
                double[] pairs = (double[]) variable(file, bounds).read().copyTo1DJavaArray();
                for (int i = 0; i < values.length; i++) {
                    assertTrue(i == 0 || values[i] > values[i - 1], name + " increases");
                    assertTrue(pairs[2 * i] <= values[i] && values[i] <= pairs[2 * i + 1], name + " in its bounds");
                }
                assertNull(variable(file, name).findAttribute("_FillValue"), name);
                assertNull(variable(file, bounds).findAttribute("units"), bounds);
            }
            assertArrayEquals(new double[] {500_050, 500_175, 500_350, 500_725}, (double[])
                    variable(file, "x").read().copyTo1DJavaArray());
        }
    }

    @Test
    void everyDataVariableHasLongNameUnitsOfTheListAndItsOwnTypeOfFillValue() throws IOException {
        for (Path path : List.of(heads, bores)) {
            try (NetcdfFile file = NetcdfFile.open(path.toString())) {
                for (Variable variable : file.getVariables()) {
                    String name = variable.getShortName();
                    if (name.endsWith("_bnds")) {
                        continue;
                    }
                    assertNotNull(variable.findAttribute("long_name"), name);
                    Attribute fill = variable.findAttribute("_FillValue");
                    assertTrue(fill == null || fill.getDataType() == variable.getDataType(), name);
                    Attribute units = variable.findAttribute("units");
                    if (units == null) {
                        assertTrue(
                                variable.getDataType() == DataType.CHAR
                                        || variable.getDataType() == DataType.BYTE
                                        || name.equals("crs"),
                                name + " needs units");
                    } else if (!units.getStringValue().startsWith("days since")) {
                        assertTrue(UNITS.contains(units.getStringValue()), name + " in " + units);
                    }
                }
            }
        }
    }

    @Test
    void everyFieldNamesAGridMappingThatExistsWithItsParameters() throws IOException {
        for (Path path : List.of(heads, bores)) {
            try (NetcdfFile file = NetcdfFile.open(path.toString())) {
                Variable crs = variable(file, "crs");
                assertEquals("transverse_mercator", text(crs, "grid_mapping_name"));
                assertEquals(
                        141.0,
                        crs.findAttribute("longitude_of_central_meridian")
                                .getNumericValue()
                                .doubleValue());
                assertTrue(text(crs, "crs_wkt").startsWith("PROJCS["));
                assertEquals(text(crs, "crs_wkt"), text(crs, "spatial_ref"));
                assertEquals("crs", text(variable(file, "hydraulic_head"), "grid_mapping"));
                assertEquals("crs", text(variable(file, "drawdown"), "grid_mapping"));
            }
        }
    }

    @Test
    void withoutAMapReferenceThereIsNoGridMapping() throws IOException {
        RunDescription d = description;
        RunDescription local = new RunDescription(
                d.title(),
                d.purpose(),
                d.datum(),
                java.util.Optional.empty(),
                d.calendar(),
                d.endDay(),
                d.provenance(),
                d.aquifer(),
                d.sealingBed(),
                d.ground(),
                d.stations(),
                d.reportDates(),
                d.measurements(),
                d.assumptions());
        Path other = Files.createDirectory(folder.resolve("local"));
        write(other, local);
        try (NetcdfFile file = NetcdfFile.open(other.resolve("heads.nc").toString())) {
            assertNull(file.findVariable("crs"));
            assertNull(variable(file, "hydraulic_head").findAttribute("grid_mapping"));
        }
    }

    @Test
    void globalAttributesCarryScenarioVersionAndHashes() throws IOException {
        for (Path path : List.of(heads, bores)) {
            try (NetcdfFile file = NetcdfFile.open(path.toString())) {
                assertEquals("CF-1.8 ACDD-1.3", global(file, "Conventions"));
                assertEquals("title: Gidgee\nbores: []\n", global(file, "scenario_document"));
                assertEquals("Headfall 0.1.0", global(file, "source"));
                assertEquals(
                        "0".repeat(64) + "  gidgee.yaml\n" + "a1".repeat(32) + "  bores, old.csv",
                        global(file, "input_files_sha256"));
                assertTrue(global(file, "history").startsWith("1970-01-01T00:00:00Z Headfall 0.1.0"));
                assertEquals("2027-07-01T00:00:00", global(file, "time_coverage_start"));
                assertEquals("2037-07-01T00:00:00", global(file, "time_coverage_end"));
                assertFalse(
                        path.toFile().getName().equals("heads.nc") && file.findGlobalAttribute("featureType") != null);
            }
        }
    }

    @Test
    void boresFileIsATimeSeriesOfStations() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(bores.toString())) {
            assertEquals("timeSeries", global(file, "featureType"));
            Variable name = variable(file, "station_name");
            assertEquals("timeseries_id", text(name, "cf_role"));
            assertEquals(List.of("Bore, \"north\"", "Brücke", "Lignum Spring", "Fence corner"), names(name));
            assertNull(variable(file, "x").findAttribute("axis"));
            assertEquals("projection_x_coordinate", text(variable(file, "x"), "standard_name"));
            assertEquals("lat lon x y station_name", text(variable(file, "hydraulic_head"), "coordinates"));
            double[] longitude = (double[]) variable(file, "lon").read().copyTo1DJavaArray();
            double[] latitude = (double[]) variable(file, "lat").read().copyTo1DJavaArray();
            assertEquals(141, longitude[0], 0.01, "500 160 m lies on the central meridian of zone 54");
            assertEquals(-28, latitude[0], 0.1);
            double[] head = (double[]) variable(file, "hydraulic_head").read().copyTo1DJavaArray();
            double[] level =
                    (double[]) variable(file, "water_level_in_bore").read().copyTo1DJavaArray();
            double[] wanted =
                    (double[]) variable(file, "wanted_discharge").read().copyTo1DJavaArray();
            assertEquals(4 * 4, head.length);
            assertEquals(119 - 1.25, head[4]);
            assertEquals(GrowingFile.DOUBLE_FILL, level[2]);
            assertEquals(500, wanted[1]);
        }
    }

    private static List<String> names(Variable variable) throws IOException {
        char[] characters = (char[]) variable.read().copyTo1DJavaArray();
        int length = variable.getShape(1);
        String bytes = new String(characters);
        return java.util.stream.IntStream.range(0, characters.length / length)
                .mapToObj(i -> bytes.substring(i * length, (i + 1) * length))
                .map(text -> new String(text.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8).trim())
                .toList();
    }

    private static Variable variable(NetcdfFile file, String name) {
        Variable variable = file.findVariable(name);
        assertNotNull(variable, name);
        return variable;
    }

    private static String text(Variable variable, String attribute) {
        return variable.findAttribute(attribute).getStringValue();
    }

    private static String global(NetcdfFile file, String attribute) {
        return file.findGlobalAttribute(attribute).getStringValue();
    }
}

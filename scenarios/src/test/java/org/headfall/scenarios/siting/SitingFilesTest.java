package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.scenarios.scenario.SitingSpecification.Distances;
import org.headfall.scenarios.scenario.SitingSpecification.Lifting;
import org.headfall.scenarios.spatial.Gdal;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/**
 * Files of a made-up answer on an invented field of 4 x 3 uneven cells, read back by NetCDF-Java, GDAL, or as text: cell c
 * allows c + 1 L/s, lifts by 10 c m and takes 45 c kWh/ML; cell 3 is no aquifer. The grid begins at 500 km east, 6,900 km north.
 */
class SitingFilesTest {

    private static final double LITRE_PER_SECOND = 86.4;
    private static final int COLUMNS = 4;
    private static final int CELL = 5;

    @TempDir
    static Path folder;

    @BeforeAll
    static void write() throws IOException {
        RunDescription run = SmallField.description();
        double[] rate = new double[run.grid().cellCount()];
        Arrays.setAll(rate, cell -> cell == SmallField.INACTIVE ? Double.NaN : LITRE_PER_SECOND * (cell + 1));
        double[] lift = new double[rate.length];
        Arrays.setAll(lift, cell -> cell == SmallField.INACTIVE ? Double.NaN : 10 * cell);
        double[] energy = Arrays.stream(lift).map(metres -> 4.5 * metres).toArray();
        int[] ruling = new int[rate.length];
        ruling[CELL] = 1;
        Site site = new Site(
                1,
                CELL,
                run.grid().centreX(CELL),
                run.grid().centreY(CELL),
                2 * LITRE_PER_SECOND,
                6 * LITRE_PER_SECOND,
                "spring, keeps (Lignum Spring)",
                61.25,
                50,
                225,
                List.of(new Site.Effect("spring, keeps (Lignum Spring)", "m", 366, 0.12345, 1.5)));
        SitingSpecification asked = new SitingSpecification(
                OptionalDouble.of(2 * LITRE_PER_SECOND),
                2,
                366,
                "",
                0.1,
                new WellLossSpecification(0, 0, 2),
                1000,
                new Lifting(OptionalDouble.empty(), 0, 10, OptionalDouble.empty(), 0.6),
                OptionalDouble.empty(),
                new Distances(List.of(), List.of(), 0),
                Optional.empty());
        SitingResult result = new SitingResult(
                run,
                rate,
                ruling,
                List.of("largest rate of a bore", "spring, keeps (Lignum Spring)"),
                lift,
                energy,
                0.01,
                List.of(site),
                asked,
                "no further cell allows the rate",
                List.of(new UncountedLimit("volume (town)", "counts volumes, not heads", "")),
                List.of());
        SiteCheck check = new SiteCheck(
                List.of(new SiteCheck.Line("spring, keeps (Lignum Spring)", "m", 366, 0.12345, 0.12395)),
                List.of(61.2));
        SitingFiles.write(folder, result, Optional.of(check));
    }

    private static String attribute(Variable variable, String name) {
        return variable.findAttribute(name).getStringValue();
    }

    private static void expectField(NetcdfFile file, String name, String units, double value) throws IOException {
        Variable variable = file.findVariable(name);
        assertEquals("y x", variable.getDimensionsString());
        assertEquals(units, variable.getUnitsString());
        assertEquals("crs", attribute(variable, "grid_mapping"));
        assertEquals(value, variable.read().getDouble(CELL), 1e-4, name);
        double fill = variable.findAttribute("_FillValue").getNumericValue().doubleValue();
        assertEquals(fill, variable.read().getDouble(SmallField.INACTIVE), name);
    }

    /** 1 kWh/ML is 3.6e6 J for 1,000 m³, so 3,600 J/m³. */
    @Test
    void mapsAreInTheNetcdfFile() throws IOException {
        try (NetcdfFile file = NetcdfFile.open(folder.resolve("siting.nc").toString())) {
            expectField(file, "largest_rate", "L s-1", 6);
            expectField(file, "ruling", "1", 1);
            expectField(file, "lift", "m", 50);
            expectField(file, "energy", "3600 J m-3", 225);
            assertEquals(
                    "largest_rate_of_a_bore spring_keeps_Lignum_Spring_",
                    attribute(file.findVariable("ruling"), "flag_meanings"));
            assertEquals(500_175, file.findVariable("x").read().getDouble(1));
            assertEquals(6_900_250, file.findVariable("y").read().getDouble(1));
            assertTrue(attribute(file.findVariable("crs"), "crs_wkt").contains("7854"));
            assertEquals(3, file.findVariable("largest_rate").getShape(0));
            assertEquals(COLUMNS, file.findVariable("largest_rate").getShape(1));
        }
    }

    private static double pixel(String file, double x, double y) throws Exception {
        return Double.parseDouble(Gdal.run(
                        "gdallocationinfo",
                        "-valonly",
                        "-geoloc",
                        folder.resolve(file).toString(),
                        String.valueOf(x),
                        String.valueOf(y))
                .trim());
    }

    /**
     * Pixels of 100 m, as wide as the narrowest cell. A rate is the least of the cells under a pixel: 6 L/s in cell 5, and also from
     * 200 to 300 m, half in cell 5 and half in cell 6, which allows 7. Lift and energy are interpolated between the centres of
     * cells, at 150 m a fifth of the way from 175 m back to 50 m.
     */
    @Test
    void mapsAreInTheRasters() throws Exception {
        for (String name : List.of("largest-rate.tif", "lift.tif", "energy.tif")) {
            String info = Gdal.run("gdalinfo", folder.resolve(name).toString());
            assertTrue(info.contains("ID[\"EPSG\",7854]"), info);
            assertTrue(info.contains("Origin = (500000.0000000000"), info);
            assertTrue(info.contains("Pixel Size = (100.0000000000"), info);
        }
        assertEquals(6, pixel("largest-rate.tif", 500_150, 6_900_250), 1e-4);
        assertEquals(6, pixel("largest-rate.tif", 500_250, 6_900_250), 1e-4);
        assertEquals(1, pixel("largest-rate.tif", 500_050, 6_900_050), 1e-4);
        assertEquals(0.8 * 50 + 0.2 * 40, pixel("lift.tif", 500_150, 6_900_250), 1e-4);
        assertEquals(0.8 * 225 + 0.2 * 180, pixel("energy.tif", 500_150, 6_900_250), 1e-3);
    }

    /** The point, turned back by GDAL from degrees, and what is written beside it. */
    @Test
    void sitesAreInTheFeatures() throws Exception {
        String text = Gdal.run(
                "ogr2ogr",
                "-t_srs",
                "EPSG:7854",
                "-f",
                "CSV",
                "/vsistdout/",
                folder.resolve("sites.geojson").toString(),
                "-lco",
                "GEOMETRY=AS_XY");
        Matcher point = Pattern.compile("(?m)^(\\d+\\.?\\d*),(\\d+\\.?\\d*),new site 1,\"2\",\"6\",")
                .matcher(text);
        assertTrue(point.find(), text);
        assertEquals(500_175, Double.parseDouble(point.group(1)), 0.1);
        assertEquals(6_900_250, Double.parseDouble(point.group(2)), 0.1);
        assertTrue(text.contains("rate (L/s)"), text);
    }

    /** 2 L/s is 63.1152 ML in a year of 365.25 days; day 366 from 1 July 2027 is 1 July 2028. */
    @Test
    void tablesHoldWhatWasFound() throws IOException {
        assertEquals(
                List.of(
                        "site,easting (m),northing (m),rate (L/s),rate (ML/yr),largest rate here (L/s),decided by,lowest level in"
                                + " the bore (m above datum),lift (m),energy (kWh/ML),lowest level by the simulator (m above"
                                + " datum)",
                        "1,500175.0,6900250.0,2.00,63.1,6.00,\"spring, keeps (Lignum Spring)\",61.25,50.00,225.0,61.20"),
                Files.readAllLines(folder.resolve("sites.csv")));
        assertEquals(
                List.of(
                        "site,limit,on,effect of the site,left with all sites,unit",
                        "1,\"spring, keeps (Lignum Spring)\",2028-07-01,0.1235,1.5000,m"),
                Files.readAllLines(folder.resolve("site-effects.csv")));
        assertEquals(
                List.of(
                        "limit,on,effect of all sites as predicted,by the simulator,difference,unit",
                        "\"spring, keeps (Lignum Spring)\",2028-07-01,0.1235,0.1240,-0.0005,m"),
                Files.readAllLines(folder.resolve("site-check.csv")));
        assertTrue(Files.readString(folder.resolve("limits-not-counted.csv"))
                .contains("volume (town),\"counts volumes, not heads\""));
    }
}

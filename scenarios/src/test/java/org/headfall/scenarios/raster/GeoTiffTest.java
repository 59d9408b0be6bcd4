package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.headfall.scenarios.spatial.Gdal;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GeoTiffTest {
    private static final int EPSG = 32755;

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 300, 16_000})
    void writtenRasterIsReadBackInItsPlace(int columns) throws IOException {
        Raster raster = randomRaster(columns, columns > 1000 ? 3 : 213, 4L + columns);
        RasterFile read = reader().read(write(raster, OptionalInt.of(EPSG)));
        assertEquals(OptionalInt.of(EPSG), read.epsgCode());
        assertArrayEquals(raster.edgesX(), read.raster().edgesX(), 1e-6);
        assertArrayEquals(raster.edgesY(), read.raster().edgesY(), 1e-6);
        assertArrayEquals(raster.values(), read.raster().values(), 1e-4);
    }

    @Test
    void localGridHasNoCode() throws IOException {
        assertEquals(
                OptionalInt.empty(),
                reader().read(write(randomRaster(5, 4, 1), OptionalInt.empty())).epsgCode());
    }

    @Test
    void gdalFindsOurFileInTheRightPlace() throws Exception {
        Path file = write(randomRaster(7, 5, 2), OptionalInt.of(EPSG));
        String info = Gdal.run("gdalinfo", "-stats", "--config", "GDAL_PAM_ENABLED", "NO", file.toString());
        assertTrue(info.contains("Size is 7, 5"), info);
        assertTrue(info.contains("Origin = (600000.000000000000000,7000250.000000000000000)"), info);
        assertTrue(info.contains("Pixel Size = (100.000000000000000,-50.000000000000000)"), info);
        assertTrue(info.contains("ID[\"EPSG\",32755]"), info);
        assertTrue(info.contains("AREA_OR_POINT=Area"), info);
        assertTrue(info.contains("COMPRESSION=DEFLATE"), info);
        assertTrue(info.contains("NoData Value=9.96921e+36"), info);
    }

    @Test
    void gdalReadsOurValues() throws Exception {
        Raster raster = randomRaster(9, 6, 3);
        Path text = folder.resolve("back.asc");
        Path tiff = write(raster, OptionalInt.of(EPSG));
        Gdal.run(
                "gdal_translate", "-q", "-of", "AAIGrid", "-co", "FORCE_CELLSIZE=NO", tiff.toString(), text.toString());
        RasterFile read = reader().read(text);
        assertArrayEquals(raster.values(), read.raster().values(), 1e-3);
        assertEquals(raster.extent(), read.raster().extent());
    }

    /** Each line is a set of creation options of gdal_translate. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "-ot Float32",
                "-ot Float64 -co COMPRESS=LZW",
                "-ot Float32 -co COMPRESS=DEFLATE -co PREDICTOR=3",
                "-ot Float64 -co COMPRESS=DEFLATE -co PREDICTOR=3 -co TILED=YES -co BLOCKXSIZE=16 -co BLOCKYSIZE=16",
                "-ot Float32 -co COMPRESS=LZW -co TILED=YES -co BLOCKXSIZE=32 -co BLOCKYSIZE=16",
                "-ot Float32 -co COMPRESS=PACKBITS",
                "-ot Int16",
                "-ot Int16 -co COMPRESS=DEFLATE -co PREDICTOR=2",
                "-ot Int32 -co COMPRESS=LZW -co PREDICTOR=2 -co TILED=YES -co BLOCKXSIZE=16 -co BLOCKYSIZE=16",
                "-ot UInt16 -co ENDIANNESS=BIG",
                "-ot Float32 -co ENDIANNESS=BIG -co COMPRESS=DEFLATE -co PREDICTOR=3",
                "-ot UInt32",
                "-ot Byte -co BLOCKYSIZE=7"
            })
    void filesOfGdalAreRead(String options) throws Exception {
        Raster raster = wholeNumbers(53, 41);
        List<String> command = new ArrayList<>(List.of("gdal_translate", "-q", "-a_nodata", "251"));
        command.addAll(List.of(options.split(" ", -1)));
        Path file = folder.resolve("gdal.tif");
        command.add(write(raster, OptionalInt.of(EPSG)).toString());
        command.add(file.toString());
        Gdal.run(command.toArray(String[]::new));
        RasterFile read = reader().read(file);
        assertArrayEquals(raster.values(), read.raster().values());
        assertEquals(raster.extent(), read.raster().extent());
        assertEquals(OptionalInt.of(EPSG), read.epsgCode());
    }

    @Test
    void pixelIsPointMeansTheSamePlaceAsArea() throws Exception {
        Raster raster = wholeNumbers(12, 8);
        Path file = folder.resolve("point.tif");
        Gdal.run(
                "gdal_translate",
                "-q",
                "-mo",
                "AREA_OR_POINT=Point",
                write(raster, OptionalInt.of(EPSG)).toString(),
                file.toString());
        RasterFile read = reader().read(file);
        assertEquals(raster.extent(), read.raster().extent());
    }

    @Test
    void scaleOffsetAndUnitOfGdalAreApplied() throws Exception {
        Path file = folder.resolve("scaled.tif");
        Raster raster = wholeNumbers(6, 5);
        Gdal.run(
                "gdal_translate",
                "-q",
                "-a_scale",
                "0.1",
                "-a_offset",
                "-3",
                write(raster, OptionalInt.of(EPSG)).toString(),
                file.toString());
        assertArrayEquals(
                raster.map(v -> v * 0.1 - 3).values(),
                reader().read(file).raster().values(),
                1e-12);
    }

    @Test
    void severalBandsNeedAChoice() throws Exception {
        Path source = write(wholeNumbers(6, 5), OptionalInt.of(EPSG));
        Path file = folder.resolve("bands.tif");
        Gdal.run("gdal_translate", "-q", "-b", "1", "-b", "1", source.toString(), file.toString());
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader().read(file));
        assertTrue(fault.found().contains("2 bands"), fault.getMessage());
        assertArrayEquals(
                wholeNumbers(6, 5).values(), reader().read(file, "2").raster().values());
        assertThrows(SpatialFormatException.class, () -> reader().read(file, "3"));
    }

    @Test
    void degreesAndRotationAndNoPlaceAreRefused() throws Exception {
        String source = write(wholeNumbers(6, 5), OptionalInt.of(EPSG)).toString();
        String file = folder.resolve("odd.tif").toString();
        Gdal.run("gdal_translate", "-q", "-a_srs", "EPSG:4326", "-a_ullr", "140", "-25", "141", "-26", source, file);
        assertFault(file, "degrees");
        Gdal.run("gdal_translate", "-q", "-co", "PROFILE=BASELINE", source, file);
        Files.deleteIfExists(Path.of(file + ".aux.xml"));
        assertFault(file, "where it lies");
        Gdal.run("gdal_translate", "-q", "-a_srs", "EPSG:2225", source, file);
        assertFault(file, "EPSG unit 9003");
        Gdal.run("gdal_translate", "-q", "-co", "SPARSE_OK=TRUE", "-co", "BIGTIFF=YES", source, file);
        assertFault(file, "BigTIFF");
    }

    @Test
    void unevenRasterIsNotWritten() {
        Raster uneven = new Raster(new double[] {0, 1, 3}, new double[] {0, 1}, new double[] {1, 2});
        assertThrows(
                IllegalArgumentException.class,
                () -> new GeoTiffWriter().write(folder.resolve("no.tif"), uneven, OptionalInt.empty()));
    }

    @Test
    void fileWithoutUnitHasNone() throws IOException {
        assertEquals(
                Optional.empty(),
                reader().read(write(wholeNumbers(3, 3), OptionalInt.empty())).unit());
    }

    private void assertFault(String file, String found) {
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader().read(Path.of(file)));
        assertTrue(fault.found().contains(found), fault.getMessage());
    }

    private Path write(Raster raster, OptionalInt epsgCode) throws IOException {
        Path file = folder.resolve("ours.tif");
        new GeoTiffWriter().write(file, raster, epsgCode);
        return file;
    }

    private static RasterReader reader() {
        return new RasterReader(RasterLimits.DEFAULT);
    }

    private static Raster randomRaster(int columns, int rows, long seed) {
        Random random = new Random(seed);
        double[] values = random.doubles((long) columns * rows, -50, 450).toArray();
        values[values.length / 2] = Double.NaN;
        return new Raster(Raster.evenEdges(600_000, 100, columns), Raster.evenEdges(7_000_000, 50, rows), values);
    }

    private static Raster wholeNumbers(int columns, int rows) {
        double[] values = new double[columns * rows];
        for (int i = 0; i < values.length; i++) {
            values[i] = (i * 37) % 251;
        }
        return new Raster(Raster.evenEdges(600_000, 100, columns), Raster.evenEdges(7_000_000, 50, rows), values);
    }
}

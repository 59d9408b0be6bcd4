package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.Gdal;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class NetcdfTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource
    void everyOrderOfTheAxesGivesTheSameRaster(NetcdfSample.Order order) throws IOException {
        RasterFile read = reader().read(write(order), "top");
        assertArrayEquals(NetcdfSample.VALUES, read.raster().values());
        assertEquals(new Extent(1000, 500, 1040, 560), read.raster().extent());
        assertEquals(Optional.of("m"), read.unit());
        assertEquals(OptionalInt.of(32755), read.epsgCode());
    }

    @Test
    void severalVariablesNeedAChoice() throws IOException {
        Path file = write(NetcdfSample.Order.SOUTH_TO_NORTH);
        SpatialFormatException none = assertThrows(SpatialFormatException.class, () -> reader().read(file));
        assertTrue(none.allowed().contains("[top, other]"), none.getMessage());
        SpatialFormatException wrong = assertThrows(SpatialFormatException.class, () -> reader().read(file, "tpo"));
        assertTrue(wrong.found().contains("tpo"), wrong.getMessage());
    }

    @Test
    void fileCutShortIsRefusedThoughTheLibraryWouldReadZeros() throws IOException {
        byte[] whole = Files.readAllBytes(write(NetcdfSample.Order.SOUTH_TO_NORTH));
        Path cut = folder.resolve("cut.nc");
        Files.write(cut, Arrays.copyOf(whole, whole.length - 8));
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader().read(cut, "other"));
        assertTrue(fault.found().contains("should have " + whole.length), fault.getMessage());
    }

    @Test
    void filesOfGdalAreReadInBothKinds() throws Exception {
        Path ascii = folder.resolve("grid.asc");
        Files.writeString(
                ascii,
                "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 10\nnodata_value -9999\n1 2 3\n4 -9999 6\n");
        for (String kind : new String[] {"NC", "NC2", "NC4", "NC4C"}) {
            Path file = folder.resolve(kind + ".nc");
            Gdal.run(
                    "gdal_translate",
                    "-q",
                    "-a_srs",
                    "EPSG:32755",
                    "-of",
                    "netCDF",
                    "-co",
                    "FORMAT=" + kind,
                    ascii.toString(),
                    file.toString());
            RasterFile read = reader().read(file);
            assertArrayEquals(
                    reader().read(ascii).raster().values(), read.raster().values(), kind);
            assertEquals(new Extent(100, 200, 130, 220), read.raster().extent(), kind);
            assertEquals(OptionalInt.of(32755), read.epsgCode(), kind);
        }
    }

    @Test
    void degreesAreRefused() throws Exception {
        Path ascii = folder.resolve("grid.asc");
        Files.writeString(ascii, "ncols 3\nnrows 2\nxllcorner 140\nyllcorner -25\ncellsize 1\n1 2 3\n4 5 6\n");
        Path file = folder.resolve("degrees.nc");
        Gdal.run("gdal_translate", "-q", "-a_srs", "EPSG:4326", "-of", "netCDF", ascii.toString(), file.toString());
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader().read(file));
        assertTrue(fault.found().contains("degrees"), fault.getMessage());
    }

    private Path write(NetcdfSample.Order order) throws IOException {
        Path file = folder.resolve("sample.nc");
        NetcdfSample.write(file, order);
        return file;
    }

    private static RasterReader reader() {
        return new RasterReader(RasterLimits.DEFAULT);
    }
}

package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.headfall.scenarios.spatial.Gdal;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged and made-up bytes end in a raster or in the one documented exception, never in another one or in a loop.
 */
class HostileRasterTest {
    private static final long SEED = Long.getLong("headfall.seed", 20260725L);
    /** A guard against endless loops only: a whole file takes milliseconds. */
    private static final Duration FOREVER = Duration.ofSeconds(60);

    @TempDir
    Path folder;

    @Test
    void randomBytesBehindEachMagicNumber() throws IOException {
        byte[][] magics = {
            {},
            {'I', 'I', 42, 0},
            {'M', 'M', 0, 42},
            {'C', 'D', 'F', 1},
            {'C', 'D', 'F', 2},
            {(byte) 0x89, 'H', 'D', 'F', '\r', '\n', 0x1a, '\n'},
            "ncols 3\n".getBytes(StandardCharsets.US_ASCII)
        };
        for (byte[] magic : magics) {
            for (int i = 0; i < 60; i++) {
                Random random = new Random(SEED + i);
                byte[] bytes = Arrays.copyOf(magic, magic.length + random.nextInt(300));
                for (int k = magic.length; k < bytes.length; k++) {
                    bytes[k] = (byte) (random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(4));
                }
                tryReading(bytes, "magic " + Arrays.toString(magic) + ", seed " + (SEED + i));
            }
        }
    }

    @Test
    void damagedTextGrids() throws IOException {
        String grid = "ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value -1\n1 2 3\n4 5 6\n";
        damage(grid.getBytes(StandardCharsets.US_ASCII), 400);
    }

    @Test
    void damagedGeoTiffOfOurs() throws IOException {
        damage(ours(), 600);
    }

    @Test
    void damagedGeoTiffsOfGdal() throws Exception {
        Path source = folder.resolve("source.tif");
        Files.write(source, ours());
        for (String compression : List.of("NONE", "LZW", "PACKBITS", "DEFLATE")) {
            Path file = folder.resolve("gdal.tif");
            Gdal.run("gdal_translate", "-q", "-co", "COMPRESS=" + compression, source.toString(), file.toString());
            damage(Files.readAllBytes(file), 400);
        }
    }

    @Test
    void damagedNetcdf() throws Exception {
        for (byte[] whole : netcdfFiles()) {
            damage(whole, 400);
        }
    }

    private List<byte[]> netcdfFiles() throws IOException {
        List<byte[]> files = new ArrayList<>();
        Path classic = folder.resolve("whole.nc");
        NetcdfSample.write(classic, NetcdfSample.Order.SOUTH_TO_NORTH);
        files.add(Files.readAllBytes(classic));
        return files;
    }

    private byte[] ours() throws IOException {
        double[] values = new Random(SEED).doubles(20 * 15).toArray();
        Raster raster = new Raster(Raster.evenEdges(0, 10, 20), Raster.evenEdges(0, 10, 15), values);
        Path file = folder.resolve("ours.tif");
        new GeoTiffWriter().write(file, raster, OptionalInt.of(32755));
        return Files.readAllBytes(file);
    }

    /** Cuts the file short or changes a few bytes, more often near its beginning, where the structure is. */
    private void damage(byte[] whole, int times) throws IOException {
        for (int i = 0; i < times; i++) {
            Random random = new Random(SEED + i);
            boolean cut = random.nextInt(4) == 0;
            byte[] bytes = Arrays.copyOf(whole, cut ? random.nextInt(whole.length) : whole.length);
            for (int k = random.nextInt(6); k > 0 && bytes.length > 0; k--) {
                int range = random.nextBoolean() ? Math.min(bytes.length, 400) : bytes.length;
                bytes[random.nextInt(range)] = (byte) random.nextInt(256);
            }
            tryReading(bytes, "seed " + (SEED + i));
        }
    }

    private void tryReading(byte[] bytes, String what) throws IOException {
        Path file = folder.resolve("hostile");
        Files.write(file, bytes);
        assertTimeoutPreemptively(FOREVER, () -> readOrRefuse(file, what), what);
    }

    private static void readOrRefuse(Path file, String what) {
        try {
            new RasterReader(new RasterLimits(1_000_000, 1_000_000)).read(file);
        } catch (SpatialFormatException expected) {
            if (expected.found().isEmpty() || expected.allowed().isEmpty()) {
                fail(what + ": a message without content", expected);
            }
        } catch (RuntimeException | Error other) {
            fail(what + ": " + other, other);
        }
    }
}

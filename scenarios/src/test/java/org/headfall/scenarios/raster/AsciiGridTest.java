package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AsciiGridTest {
    private static final String CORNER = "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 10\n";

    @TempDir
    Path folder;

    @Test
    void rowsRunFromNorthToSouthInTheFile() {
        Raster raster = read(CORNER + "NODATA_value -9999\n1 2 3\n4 -9999 6\n");
        assertEquals(new Extent(100, 200, 130, 220), raster.extent());
        assertArrayEquals(new double[] {4, Double.NaN, 6, 1, 2, 3}, raster.values());
    }

    @Test
    void centreKeywordsShiftByHalfACell() {
        Raster raster = read("NCOLS 3\nNROWS 2\nXLLCENTER 100\nYLLCENTER 200\nCELLSIZE 10\n1 2 3\n4 5 6\n");
        assertEquals(new Extent(95, 195, 125, 215), raster.extent());
        assertEquals(100, raster.centreX(0));
        assertEquals(200, raster.centreY(0));
    }

    @Test
    void defaultHoleIsMinus9999AndTextNanIsAHole() {
        Raster raster = read(CORNER + "-9999 nan NaN\n-nan 1.#QNAN 6\n");
        assertEquals(5, raster.holes());
    }

    @Test
    void roundedLeastFloatIsAHole() {
        Raster raster = read(CORNER + "nodata_value -3.40282e+38\n-3.4028234663852886e+38 2 3\n4 5 6");
        assertEquals(1, raster.holes());
    }

    @Test
    void windowsLineEndsAndByteOrderMarkAreAllowed() {
        Raster raster = read("\uFEFF" + CORNER.replace("\n", "\r\n") + "1 2 3\r\n4 5 6\r\n");
        assertArrayEquals(new double[] {4, 5, 6, 1, 2, 3}, raster.values());
    }

    @Test
    void valuesMayWrapOverLines() {
        assertArrayEquals(
                new double[] {4, 5, 6, 1, 2, 3},
                read(CORNER + "1\n2\n3\n4\n5\n6\n").values());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1 2 3\\n4 5          | 7 | line 7 holds 2
            1 2\\n3 4 5 6\\n     | 6 | line 6 holds 2
            1 2 3\\n4 5 6 7\\n   | 7 | "7"
            1 2 3\\n4 5 6\\nend  | 8 | "end"
            1 2 3\\n4 five 6\\n  | 7 | "five"
            1 2 3\\n4 1,5 6\\n   | 7 | "1,5"
            1 2 3\\n4 0x1p3 6\\n | 7 | "0x1p3"
            1 2 3\\n4 1e999 6\\n | 7 | "1e999"
            1 2 3\\n4 inf 6\\n   | 7 | "inf"
            """)
    void faultsNameTheLine(String values, int line, String found) {
        SpatialFormatException fault = fault(CORNER + values.replace("\\n", "\n"));
        assertEquals(line, fault.line(), fault.getMessage());
        assertTrue(fault.found().contains(found), fault.getMessage());
    }

    @Test
    void columnOfAWrongWordIsReported() {
        SpatialFormatException fault = fault(CORNER + "1 2 3\n4 five 6\n");
        assertEquals(3, fault.column());
    }

    @Test
    void decimalCommaIsExplained() {
        assertTrue(fault(CORNER + "1,5 2 3\n4 5 6").allowed().contains("not a comma"));
    }

    @ParameterizedTest
    @CsvSource({
        "xllcorner 100, xllcenter 100, mixed",
        "cellsize 10, cellsize 0, cell size above 0",
        "cellsize 10, cellsise 10, cellsise",
        "ncols 3, ncols 2.5, whole number",
        "ncols 3, ncols 30000000, up to 25000000 cells",
        "ncols 3, ncols 1000, 1000 x 2 = 2000",
        "nrows 2, ncols 2, twice",
        "xllcorner 100, '', without xllcorner"
    })
    void headerFaultsAreNamed(String right, String wrong, String expected) {
        SpatialFormatException fault = fault(CORNER.replace(right, wrong) + "1 2 3\n4 5 6");
        assertTrue(fault.getMessage().contains(expected), fault.getMessage());
    }

    @Test
    void twoGigabyteFileIsRefusedWithoutReadingIt() throws IOException {
        Path file = folder.resolve("large.asc");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(2_000_000_000L);
        }
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader().read(file));
        assertTrue(fault.getMessage().contains("2000 MB"), fault.getMessage());
        assertTrue(fault.allowed().contains("512 MB"), fault.getMessage());
    }

    @Test
    void missingFileEmptyFileAndFolderAreReported() throws IOException {
        assertTrue(assertThrows(SpatialFormatException.class, () -> reader().read(folder.resolve("none.asc")))
                .found()
                .contains("no readable file"));
        assertTrue(assertThrows(SpatialFormatException.class, () -> reader().read(folder))
                .found()
                .contains("a folder"));
        assertTrue(fault("").found().contains("empty"));
    }

    private static RasterReader reader() {
        return new RasterReader(RasterLimits.DEFAULT);
    }

    private Raster read(String text) {
        try {
            Path file = folder.resolve("grid.asc");
            Files.write(file, text.getBytes(StandardCharsets.UTF_8));
            return reader().read(file).raster();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private SpatialFormatException fault(String text) {
        return assertThrows(SpatialFormatException.class, () -> read(text));
    }
}

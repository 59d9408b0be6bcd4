package org.headfall.scenarios.badinput;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Input that is too large to be kept, or that depends on the file system; and unusual input that is no fault. */
class UnusualInputTest {
    private static final long TWO_GIGABYTES = 2L << 30;

    @TempDir
    private Path parent;

    private Path folder;
    private Path document;

    @BeforeEach
    void copyBase() throws IOException {
        folder = Files.createDirectory(parent.resolve("field"));
        document = folder.resolve("scenario.yaml");
        BadInputCase.copyBase(folder);
    }

    private void replace(String found, String replacement) throws IOException {
        String text = Files.readString(document);
        assertTrue(text.contains(found), found);
        Files.writeString(document, text.replace(found, replacement));
    }

    /** A file of zeros that takes up no room on the disk. */
    private void makeHuge(String name) throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(folder.resolve(name).toFile(), "rw")) {
            file.setLength(TWO_GIGABYTES);
        }
    }

    @Test
    @Timeout(60)
    void refusesFilesOfTwoGigabytesBeforeReadingThem() throws IOException {
        for (String name : List.of("top.asc", "bores.csv", "outcrop.geojson")) {
            makeHuge(name);
        }
        assertEquals("""
                bores.csv: bores.csv is too large: found a file of 2147 MB; allowed: tables up to 500 MB; leave out \
                what is not needed
                scenario.yaml:11:17: top.asc cannot be read: found a file of 2147 MB; allowed: rasters up to 512 MB; cut \
                it to the extent of the grid or use larger cells
                scenario.yaml:22:41: outcrop.geojson cannot be read: found a file of 2147 MB; allowed: GeoJSON files up \
                to 200 MB; cut it to the extent of the grid
                """, Messages.of(document));
        makeHuge("scenario.yaml");
        assertEquals(
                "scenario.yaml: scenario.yaml is too large: found a file of 2147 MB; allowed: at most 20 MB; put long"
                        + " lists into CSV files beside the document\n",
                Messages.of(document));
    }

    @Test
    @Timeout(120)
    void readsNoMoreThanItMayOfTenMillionRows() throws IOException {
        long before = usedMemory();
        try (BufferedWriter rates = Files.newBufferedWriter(folder.resolve("rates.csv"))) {
            rates.write("date,rate (L/s)\n");
            for (int i = 0; i < 10_000_000; i++) {
                rates.write("2026-07-01,10\n");
            }
        }
        String messages = Messages.of(document);
        assertTrue(
                messages.startsWith("rates.csv:3:1: date is out of order: found 2026-07-01 after 2026-07-01; allowed:"
                        + " each date later than the one before\n"),
                messages);
        assertTrue(
                messages.contains("rates.csv:2000002:1: rates.csv has too many rows: found more rows; allowed: at most"
                        + " 2000000 rows\n"),
                messages);
        assertEquals(22, messages.lines().count(), messages);
        assertTrue(messages.endsWith("rates.csv: rates.csv has more problems of this kind: found and 1999979 more where"
                + " something is out of order; allowed: none\n"));
        assertTrue(usedMemory() - before < 100_000_000, "what has been read was kept");
    }

    private static long usedMemory() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }

    @Test
    void followsNoLinkOutOfTheFolderUnlessAllowed() throws IOException {
        Path elsewhere = parent.resolve("elsewhere.csv");
        Files.move(folder.resolve("bores.csv"), elsewhere);
        Files.createSymbolicLink(folder.resolve("bores.csv"), elsewhere);
        assertEquals(
                "scenario.yaml:28:12: bores[1].file is outside the folder of the scenario document: found bores.csv, a"
                        + " link to elsewhere; allowed: files in the folder of the scenario document or within it, or"
                        + " the option --allow-outside-files\n",
                Messages.of(document));
        assertEquals("", Messages.of(document, FileReach.ANYWHERE));
    }

    @Test
    void followsLinksWithinTheFolder() throws IOException {
        Files.move(folder.resolve("bores.csv"), folder.resolve("bores-2026.csv"));
        Files.createSymbolicLink(folder.resolve("bores.csv"), Path.of("bores-2026.csv"));
        assertEquals("", Messages.of(document));
    }

    @Test
    void endsOnALinkToItself() throws IOException {
        Files.delete(folder.resolve("bores.csv"));
        Files.createSymbolicLink(folder.resolve("bores.csv"), Path.of("bores.csv"));
        assertEquals(
                "scenario.yaml:28:12: bores[1].file does not exist: found bores.csv, a link to nothing; allowed: a file"
                        + " in the folder of the scenario document\n",
                Messages.of(document));
    }

    @Test
    void takesLineEndsAndByteOrderMarksOfOtherSystems() throws IOException {
        for (String name : List.of("scenario.yaml", "bores.csv", "changes.csv", "rates.csv", "top.asc")) {
            Path file = folder.resolve(name);
            String mark = name.endsWith(".asc") ? "" : "\ufeff";
            Files.writeString(file, mark + Files.readString(file).replace("\n", "\r\n"));
        }
        assertEquals("", Messages.of(document));
        replace("cell: 1 km", "cell: 1");
        assertEquals(
                "scenario.yaml:7:9: grid.cell has no unit: found 1; allowed: a length, such as 250 m\n",
                Messages.of(document));
    }

    @Test
    void takesNamesOfEveryLanguageAndFilesWithSpaces() throws IOException {
        Files.move(folder.resolve("bores.csv"), folder.resolve("bores of \u00c9tang d\u2019eau.csv"));
        replace("bores.csv", "bores of \u00c9tang d\u2019eau.csv");
        replace("North Bore", "\"\u4e95 n\u00ba 7: \u0628\u0626\u0631 <b>&amp;</b>\"");
        assertEquals("", Messages.of(document));
    }

    @Test
    void namesFilesWithSpacesInMessages() throws IOException {
        Files.move(folder.resolve("rates.csv"), folder.resolve("rates of the town.csv"));
        Path bores = folder.resolve("bores.csv");
        Files.writeString(bores, Files.readString(bores).replace("rates.csv", "rates of the twn.csv"));
        assertEquals(
                "bores.csv:2:49: schedule does not exist: found rates of the twn.csv; allowed: a file in the folder of"
                        + " the scenario document; did you mean rates of the town.csv?\n",
                Messages.of(document));
    }

    @Test
    void saysWhichFileMayNotBeRead() throws IOException {
        Path bores = folder.resolve("bores.csv");
        boolean may = bores.toFile().setReadable(false) && !Files.isReadable(bores);
        assumeTrue(may, "this user may read every file");
        assertEquals(
                "scenario.yaml:28:12: bores[1].file cannot be read: found bores.csv; allowed: a file that may be read\n",
                Messages.of(document));
    }

    @Test
    void countsColumnsInCharactersNotBytes() throws IOException {
        Files.write(
                document, "title: \u4e95\ud83d\udca7\ncrs: [\u4e95, \ud83d\udca7}\n".getBytes(StandardCharsets.UTF_8));
        assertTrue(Messages.of(document).startsWith("scenario.yaml:2:11: scenario.yaml cannot be read as written"));
    }
}

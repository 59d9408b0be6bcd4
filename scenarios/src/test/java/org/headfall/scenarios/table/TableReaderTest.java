package org.headfall.scenarios.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableReaderTest {
    private static final TableFormat FORMAT = TableFormat.of(
            TableColumn.text("name"),
            TableColumn.quantity("rate", Dimension.RATE, AllowedRange.NOT_NEGATIVE),
            TableColumn.date("from").orNone(),
            TableColumn.word("group", Set.of("proposed", "existing")).orNone());

    @TempDir
    Path folder;

    private final Problems problems = new Problems();
    private final List<TableRow> rows = new ArrayList<>();

    private void read(String text) throws IOException {
        read(text, StandardCharsets.UTF_8, FORMAT);
    }

    private void read(String text, Charset charset, TableFormat format) throws IOException {
        Path file = Files.write(folder.resolve("t.csv"), text.getBytes(charset));
        new TableReader(format, problems).read(file, "t.csv", rows::add);
    }

    @Test
    void unitsStandInTheHeaderOrInEachCell() throws IOException {
        read("name,rate (L/s)\nA,25\n");
        read("name,rate\nB,0.8 ML/d\n");
        assertTrue(problems.isEmpty(), problems::toText);
        assertEquals(2160, rows.get(0).value("rate"), 1e-9);
        assertEquals(800, rows.get(1).value("rate"), 1e-9);
    }

    @Test
    void columnsMayStandInAnyOrderAndOptionalOnesMayBeEmptyOrAbsent() throws IOException {
        read("From, Rate (m3/d),NAME,group\n2026-07-01,5,\"A, \"\"north\"\"\",existing\n,6,B,\n");
        assertTrue(problems.isEmpty(), problems::toText);
        assertEquals("A, \"north\"", rows.get(0).text("name"));
        assertEquals(LocalDate.of(2026, 7, 1), rows.get(0).date("from"));
        assertFalse(rows.get(1).has("from"));
        assertEquals(-1, rows.get(1).valueOr("none", -1));
        assertEquals(new Place("t.csv", 3, 4), rows.get(1).place("name"));
    }

    @Test
    void byteOrderMarkWindowsLineEndsRemarksAndBlankLinesAreAccepted() throws IOException {
        read("\uFEFF# remark\r\nname,rate (L/s)\r\n\r\nA,1\r\n# another\r\nB,-1\r\n");
        assertEquals("A", rows.get(0).text("name"));
        assertReported("t.csv:6:3 OUT_OF_RANGE");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "name;rate (L/s)\\nA;5\\n | t.csv:1:5 WRONG_DELIMITER",
                "name\\trate\\nA\\t5\\n | t.csv:1:5 WRONG_DELIMITER",
                "name,rate (L/s)\\nA,\"2,5\"\\n | t.csv:2:3 DECIMAL_COMMA",
                "name,rate (L/s)\\nA,2,5\\n | t.csv:2:5 RAGGED_ROW",
                "name,rate (L/s)\\nA\\n | t.csv:2:2 RAGGED_ROW",
                "name,rat (L/s)\\nA,5\\n | t.csv:1:1 MISSING_COLUMN,t.csv:1:6 UNKNOWN_COLUMN",
                "name,rate (L/s),rate (m3/d)\\nA,5,6\\n | t.csv:1:17 DUPLICATE_COLUMN",
                "name,rate (l/s)\\nA,5\\n | t.csv:1:6 UNKNOWN_UNIT",
                "name,rate (m)\\nA,5\\n | t.csv:1:6 WRONG_UNIT",
                "name (m),rate (L/s)\\nA,5\\n | t.csv:1:1 WRONG_UNIT",
                "name,rate\\nA,5\\n | t.csv:2:3 MISSING_UNIT",
                "name,rate (L/s)\\nA,5 L/s\\n | t.csv:2:3 WRONG_UNIT",
                "name,rate (L/s)\\nA,NaN\\n | t.csv:2:3 NOT_A_NUMBER",
                "name,rate (L/s)\\nA,five\\n | t.csv:2:3 NOT_A_NUMBER",
                "name,rate (L/s)\\nA,1e999\\n | t.csv:2:3 NOT_A_NUMBER",
                "name,rate (L/s)\\nA,\\n | t.csv:2:3 EMPTY_VALUE",
                "name,rate (L/s)\\n ,5\\n | t.csv:2:1 EMPTY_VALUE",
                "name,rate (L/s)\\nA,-5\\n | t.csv:2:3 OUT_OF_RANGE",
                "name,rate (L/s),from\\nA,5,1/7/2026\\n | t.csv:2:5 NOT_A_DATE",
                "name,rate (L/s),from\\nA,5,2027-02-29\\n | t.csv:2:5 NOT_A_DATE",
                "name,rate (L/s),group\\nA,5,exsting\\n | t.csv:2:5 NOT_A_CHOICE",
                "name,rate (L/s)\\n | t.csv:1:1 NO_ROWS",
                "# only remarks\\n | t.csv NO_ROWS",
                "name,rate (L/s),\\nA,5,\\n | t.csv:1:17 EMPTY_VALUE",
                "name,rate (L/s)\\n\"a\\nb\",x\\n | t.csv:3:4 NOT_A_NUMBER",
                "name,rate (L/s)\\n\"a\"\"b\",x\\n | t.csv:2:8 NOT_A_NUMBER",
                "name,rate (L/s)\\n💧é,x\\n | t.csv:2:4 NOT_A_NUMBER",
            })
    void badTablesAreReportedWithPlaceAndKind(String text, String expected) throws IOException {
        read(text.replace("\\n", "\n").replace("\\t", "\t"));
        assertReported(expected.split(","));
        assertTrue(rows.isEmpty());
    }

    @Test
    void goodRowsBesideBadOnesAreHandedOn() throws IOException {
        read("name,rate (L/s)\nA,x\nB,5\nC,y\n");
        assertEquals(1, rows.size());
        assertReported("t.csv:2:3 NOT_A_NUMBER", "t.csv:4:3 NOT_A_NUMBER");
    }

    @Test
    void otherColumnsArePassedOverWhereTheFormatSaysSo() throws IOException {
        read("name,colour,rate (L/s)\nA,red,5\n", StandardCharsets.UTF_8, FORMAT.withOtherColumns());
        assertTrue(problems.isEmpty(), problems::toText);
        assertEquals(432, rows.get(0).value("rate"), 1e-9);
    }

    @Test
    void bytesThatAreNotUtf8AreReportedInTheirCell() throws IOException {
        read("name,rate (L/s)\nBoré,5\n", StandardCharsets.ISO_8859_1, FORMAT);
        assertReported("t.csv:2:1 ENCODING");
    }

    @Test
    void tooManyRowsEndTheReadingAtTheLimit() throws IOException {
        TableFormat three = new TableFormat(FORMAT.columns(), false, 3);
        read("name,rate (L/s)\nA,1\nB,1\nC,1\nD,1\nE,1\n", StandardCharsets.UTF_8, three);
        assertEquals(3, rows.size());
        assertReported("t.csv:5:1 TOO_MANY_ROWS");
    }

    /** Ten million bad rows (about 90 MB): the report stays short and only the limit is read. */
    @Test
    void tenMillionRowsAreReadInLittleMemory() throws IOException {
        Path file = folder.resolve("long.csv");
        try (BufferedWriter writer = Files.newBufferedWriter(file)) {
            writer.write("name,rate (L/s)\n");
            String block = "A,x\n".repeat(10_000);
            for (int i = 0; i < 1000; i++) {
                writer.write(block);
            }
        }
        new TableReader(FORMAT, problems).read(file, "long.csv", rows::add);
        assertEquals(TableFormat.MOST_ROWS + 1, problems.count());
        assertEquals(22, problems.sorted().size());
    }

    @Test
    void aFileOfTwoGigabytesWithoutALineEndIsRefused() throws IOException {
        Path file = folder.resolve("sparse.csv");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(2_200_000_000L);
        }
        new TableReader(FORMAT, problems).read(file, "sparse.csv", rows::add);
        assertReported("sparse.csv FILE_TOO_LARGE");
    }

    @Test
    void theNearestColumnNameIsSuggested() throws IOException {
        read("nmae,rate (L/s)\nA,5\n");
        for (Problem problem : problems.sorted()) {
            if (problem.kind() == ProblemKind.UNKNOWN_COLUMN) {
                assertEquals("name", problem.finding().suggestion());
            } else {
                assertEquals(ProblemKind.MISSING_COLUMN, problem.kind());
                assertTrue(problem.finding().found().contains("nmae"), problem::toString);
            }
        }
        assertEquals(2, problems.count());
    }

    /** Names are compared without regard to case and hyphens, but shown as they were typed. */
    @Test
    void aMissingColumnIsNamedAsItWasTyped() throws IOException {
        TableFormat format = TableFormat.of(TableColumn.quantity("Town 1 rates", Dimension.RATE, AllowedRange.ANY))
                .withOtherColumns();
        read("date,Town-1 rate (L/s)\n2026-07-01,5\n", StandardCharsets.UTF_8, format);
        Problem problem = problems.sorted().get(0);
        assertEquals(
                "no column Town 1 rates, but Town-1 rate (L/s)",
                problem.finding().found());
        assertEquals("the columns Town 1 rates", problem.finding().allowed());
    }

    @ParameterizedTest
    @ValueSource(strings = {"Town 1", "town-1", "Town 1 (L/s)"})
    void aColumnMayBeNamedAsItStandsInTheHeader(String column) throws IOException {
        TableColumn wanted = TableColumn.quantity(column, Dimension.RATE, AllowedRange.ANY);
        read("Town 1 (L/s)\n5\n", StandardCharsets.UTF_8, TableFormat.of(wanted));
        assertTrue(problems.isEmpty(), problems::toText);
        assertEquals(432, rows.get(0).value(wanted.name()), 1e-9);
    }

    @Test
    void randomTablesEndInRowsOrProblems() throws IOException {
        String letters = "A1,,\n\n\"\"-5.;\t\r#()L/s é\u0000";
        long seed = 4711;
        Random random = new Random(seed);
        for (int i = 0; i < 3000; i++) {
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "name,rate (L/s)\n" : "");
            for (int n = random.nextInt(60); n > 0; n--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            rows.clear();
            Problems found = new Problems();
            Path file = Files.writeString(folder.resolve("random.csv"), text);
            try {
                new TableReader(FORMAT, found).read(file, "random.csv", rows::add);
                assertTrue(!rows.isEmpty() || !found.isEmpty(), "seed " + seed + ", text " + i);
            } catch (RuntimeException unexpected) {
                throw new AssertionError("seed " + seed + ", text " + i + ": " + text, unexpected);
            }
        }
    }

    private void assertReported(String... expected) {
        List<String> found = problems.sorted().stream()
                .map(problem -> problem.place() + " " + problem.kind())
                .toList();
        assertEquals(List.of(expected), found, problems::toText);
    }
}

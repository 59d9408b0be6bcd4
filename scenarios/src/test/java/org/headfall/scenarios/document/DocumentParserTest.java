package org.headfall.scenarios.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentParserTest {
    private final Problems problems = new Problems();
    private final DocumentParser parser = new DocumentParser("town.yaml", problems);

    @TempDir
    Path folder;

    @Test
    void everyNodeKnowsItsPlace() {
        DocumentNode.Mapping document = assertInstanceOf(
                DocumentNode.Mapping.class,
                parser.parse("title: Mulga\ngrid:\n  cell: 1 km\nsprings:\n  - {at: [31 km, 22 km]}\n"));
        DocumentNode.Mapping grid = assertInstanceOf(
                DocumentNode.Mapping.class, document.entries().get(1).value());
        assertEquals(new Place("town.yaml", 3, 3), grid.entries().get(0).keyPlace());
        assertEquals(new Place("town.yaml", 3, 9), grid.entries().get(0).value().place());
        DocumentNode.Listing springs = assertInstanceOf(
                DocumentNode.Listing.class, document.entries().get(2).value());
        DocumentNode.Mapping spring =
                assertInstanceOf(DocumentNode.Mapping.class, springs.entries().get(0));
        DocumentNode.Listing at = assertInstanceOf(
                DocumentNode.Listing.class, spring.entries().get(0).value());
        assertEquals(new Place("town.yaml", 5, 18), at.entries().get(1).place());
        assertTrue(problems.isEmpty());
    }

    @Test
    void duplicateKeysAreAllReportedAndTheFirstIsKept() {
        DocumentNode.Mapping document =
                assertInstanceOf(DocumentNode.Mapping.class, parser.parse("a: 1\nb: 2\na: 3\nc: {d: 1, d: 2}\n"));
        assertEquals(3, document.entries().size());
        assertEquals("1", document.entries().get(0).value().shown());
        assertReported("town.yaml:3:1 DUPLICATE_KEY", "town.yaml:4:11 DUPLICATE_KEY");
    }

    @Test
    void syntaxErrorsHaveTheirPlace() {
        assertNull(parser.parse("title: Mulga\n\tdatum: metres\n"));
        assertReported("town.yaml:2:1 SYNTAX");
    }

    @Test
    void anchorsAliasesAndTagsAreRefused() {
        assertNull(parser.parse("a: &x [1]\nb: *x\n"));
        assertNull(parser.parse("a: 1\nb: *x\n"));
        assertNull(parser.parse("a: !!binary aGVsbG8=\n"));
        assertReported("town.yaml:1:4 NOT_SUPPORTED", "town.yaml:1:4 NOT_SUPPORTED", "town.yaml:2:4 NOT_SUPPORTED");
    }

    @Test
    void anAliasBombEndsAtItsFirstAnchor() {
        StringBuilder bomb = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x]\n");
        for (char name = 'b'; name <= 'z'; name++) {
            char before = (char) (name - 1);
            bomb.append(name)
                    .append(": &")
                    .append(name)
                    .append(" [")
                    .append(("*" + before + ", ").repeat(9))
                    .append("]\n");
        }
        assertNull(parser.parse(bomb.toString()));
        assertReported("town.yaml:1:4 NOT_SUPPORTED");
    }

    @Test
    void deepNestingIsRefusedWithoutExhaustingTheStack() {
        assertNull(parser.parse("a: " + "[".repeat(200_000)));
        assertReported("town.yaml:1:23 TOO_DEEP");
    }

    @Test
    void moreThanAMillionValuesAreRefused() {
        assertNull(parser.parse("a: [" + "1,".repeat(1_100_000) + "1]"));
        assertEquals(ProblemKind.FILE_TOO_LARGE, problems.sorted().get(0).kind());
    }

    @Test
    void listsAsKeysAndSecondDocumentsAreRefused() {
        assertNull(parser.parse("[a, b]: 1\n"));
        assertNull(parser.parse("a: 1\n---\nb: 2\n"));
        assertReported("town.yaml:1:1 NOT_SUPPORTED", "town.yaml:2:1 NOT_SUPPORTED");
    }

    @Test
    void emptyDocumentsAreReported() {
        assertNull(parser.parse(""));
        assertNull(parser.parse("# nothing but a remark\n"));
        assertReported("town.yaml EMPTY_VALUE", "town.yaml EMPTY_VALUE");
    }

    @Test
    void aByteOrderMarkIsAccepted() throws IOException {
        Path file = Files.write(folder.resolve("bom.yaml"), "\uFEFFtitle: x\n".getBytes(StandardCharsets.UTF_8));
        DocumentNode node = parser.parse(file);
        assertEquals(
                new Place("town.yaml", 1, 1),
                ((DocumentNode.Mapping) node).entries().get(0).keyPlace());
        assertTrue(problems.isEmpty());
    }

    @Test
    void bytesThatAreNotUtf8HaveTheirPlace() throws IOException {
        Path file = Files.write(folder.resolve("latin.yaml"), "a: 1\nb: é\n".getBytes(StandardCharsets.ISO_8859_1));
        assertNull(parser.parse(file));
        assertReported("town.yaml:2:4 ENCODING");
    }

    @Test
    void controlCharactersHaveTheirPlace() {
        assertNull(parser.parse("a: 1\nb: x\u0001y\n"));
        assertReported("town.yaml:2:5 SYNTAX");
    }

    @Test
    void aDocumentOfTwoGigabytesIsRefusedUnread() throws IOException {
        Path file = folder.resolve("large.yaml");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(2_200_000_000L);
        }
        assertNull(parser.parse(file));
        assertReported("town.yaml FILE_TOO_LARGE");
    }

    @Test
    void foldersAndMissingFilesAreReported() {
        assertNull(parser.parse(folder));
        assertNull(parser.parse(folder.resolve("none.yaml")));
        assertReported("town.yaml FILE_UNREADABLE", "town.yaml FILE_MISSING");
    }

    @Test
    void randomTextsEndInADocumentOrAProblem() {
        String letters = "abc: \n\n  -[]{},#&*!|>'\"%@`~?\t\\0123\u0085\u2028é\uD83D\uDCA7";
        long seed = 71;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(60); n > 0; n--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            Problems found = new Problems();
            try {
                DocumentNode node = new DocumentParser("random.yaml", found).parse(text.toString());
                assertTrue(node != null || !found.isEmpty(), "seed " + seed + ", text " + i);
            } catch (RuntimeException | Error unexpected) {
                throw new AssertionError("seed " + seed + ", text " + i + ": " + text, unexpected);
            }
        }
    }

    private void assertReported(String... expected) {
        List<String> found = problems.sorted().stream()
                .map((Problem problem) -> problem.place() + " " + problem.kind())
                .toList();
        assertEquals(List.of(expected), found, problems::toText);
    }
}

package org.headfall.scenarios.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScenarioFolderTest {
    private static final Place PLACE = new Place("town.yaml", 4, 10);

    @TempDir
    Path root;

    private final Problems problems = new Problems();
    private Path inner;
    private ScenarioFolder folder;

    @BeforeEach
    void makeFolder() throws IOException {
        inner = Files.createDirectories(root.resolve("inner/tables"));
        Files.writeString(root.resolve("inner/town.yaml"), "title: x\n");
        Files.writeString(inner.resolve("bores.csv"), "abc");
        Files.writeString(root.resolve("outside.csv"), "secret");
        folder = new ScenarioFolder(root.resolve("inner/town.yaml"), FileReach.FOLDER_OF_DOCUMENT);
    }

    @Test
    void findsFilesWithinAndKeepsTheirHashes() throws IOException {
        assertNotNull(find("tables/bores.csv"));
        assertNotNull(find("./tables/../tables/bores.csv"));
        List<UsedFile> used = folder.usedFiles();
        assertEquals(
                List.of("tables/bores.csv", "town.yaml"),
                used.stream().map(UsedFile::name).toList());
        // FIPS 180-4 example: SHA-256 of "abc"
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                used.get(0).sha256());
    }

    @Test
    void refusesPathsThatLeaveTheFolder() throws IOException {
        Files.createSymbolicLink(inner.resolve("link.csv"), root.resolve("outside.csv"));
        assertNull(find("../outside.csv"));
        assertNull(find("tables/../../outside.csv"));
        assertNull(find(root.resolve("outside.csv").toString()));
        assertNull(find(inner.resolve("bores.csv").toString()));
        assertNull(find("tables/link.csv"));
        assertNull(find("../nowhere.csv"));
        assertEquals(6, problems.count());
        problems.sorted().forEach(p -> assertEquals(ProblemKind.FILE_OUTSIDE_FOLDER, p.kind(), p::toString));
    }

    @Test
    void reachesAnywhereWhenTheUserSaysSo() throws IOException {
        folder = new ScenarioFolder(root.resolve("inner/town.yaml"), FileReach.ANYWHERE);
        assertNotNull(find("../outside.csv"));
        assertNotNull(find(root.resolve("outside.csv").toString()));
        assertEquals(2, folder.usedFiles().size());
    }

    @Test
    void suggestsTheNearestFileName() {
        assertNull(find("tables/bore.csv"));
        assertEquals(ProblemKind.FILE_MISSING, problems.sorted().get(0).kind());
        assertEquals(PLACE, problems.sorted().get(0).place());
        assertEquals("tables/bores.csv", problems.sorted().get(0).finding().suggestion());
    }

    @Test
    void refusesFoldersAndImpossibleNames() {
        assertNull(find("tables"));
        assertNull(find("a\u0000b"));
        assertNull(find("x".repeat(5000)));
        assertEquals(3, problems.count());
    }

    private Path find(String text) {
        return folder.find(text, PLACE, "bores.file", problems);
    }
}

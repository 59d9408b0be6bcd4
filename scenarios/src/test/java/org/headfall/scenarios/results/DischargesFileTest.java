package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.Optional;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DischargesFileTest {

    private static final DischargeHistory HISTORY = new DischargeHistory(
            new double[] {0, 30, 31.5, 400},
            new double[][] {{0, 864, 864}, {10, 12, 0}, {-1e-12, 5, 1.0 / 3}},
            new double[][] {{0, 864, 900}, {12, 12, 0}, {5, 5, 7}});

    @TempDir
    Path folder;

    @Test
    void whatIsWrittenIsReadToTheLastBit() throws Exception {
        DischargesFile.write(folder, SmallField.description(), HISTORY);
        DischargeHistory read = DischargesFile.read(folder).orElseThrow();
        assertArrayEquals(HISTORY.days(), read.days());
        for (int point = 0; point < HISTORY.points(); point++) {
            assertArrayEquals(HISTORY.begin()[point], read.begin()[point]);
            assertArrayEquals(HISTORY.end()[point], read.end()[point]);
        }
    }

    @Test
    void aFolderWithoutTheFileHasNone() throws Exception {
        assertEquals(Optional.empty(), DischargesFile.read(folder));
    }

    @Test
    void everyPieceNeedsADischarge() {
        double[][] tooShort = {{1}};
        assertThrows(
                IllegalArgumentException.class, () -> new DischargeHistory(new double[] {0, 1, 2}, tooShort, tooShort));
    }
}

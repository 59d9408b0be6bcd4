package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.FloatBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SolutionsBesideTest {

    @TempDir
    Path folder;

    private static float[] values(int count, Random random) {
        float[] values = new float[count];
        for (int i = 0; i < count; i++) {
            values[i] = random.nextFloat();
        }
        return values;
    }

    /** The first fit on the heap, the others go to the file; all come back as they were, and nothing stays behind. */
    @Test
    void keepsNumbersWhereverThereIsRoom() throws IOException {
        Random random = new Random(5);
        List<float[]> given = new ArrayList<>();
        List<FloatBuffer> kept = new ArrayList<>();
        try (SolutionsBeside memory = new SolutionsBeside(folder, 5000)) {
            for (int count : new int[] {1000, 0, 3001, 7, 100_000}) {
                float[] values = values(count, random);
                given.add(values.clone());
                kept.add(memory.keep(values));
            }
            assertTrue(kept.get(0).hasArray());
            assertTrue(kept.get(4).isDirect());
            for (int i = 0; i < given.size(); i++) {
                float[] back = new float[given.get(i).length];
                kept.get(i).get(0, back);
                assertEquals(FloatBuffer.wrap(given.get(i)), FloatBuffer.wrap(back));
            }
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(0, left.count());
        }
    }
}

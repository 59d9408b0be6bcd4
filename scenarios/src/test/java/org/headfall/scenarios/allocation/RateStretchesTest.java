package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.allocation.Ties;
import org.junit.jupiter.api.Test;

class RateStretchesTest {

    private static RateBlocks years(int years, int seasons) {
        List<RateBlocks.Block> blocks = new ArrayList<>();
        List<Integer> seasonOf = new ArrayList<>();
        for (int group = 0; group < years * seasons; group++) {
            double length = 365.25 / seasons;
            blocks.add(new RateBlocks.Block(group * length, (group + 1) * length, group));
            seasonOf.add(group % seasons);
        }
        return new RateBlocks(blocks, seasonOf);
    }

    /** By hand: in the second level the stretches of 50 years end with years 1, 2, 4, 8, 16, 32 and 50. */
    @Test
    void stretchesGrowWithTimeAndKeepSeasonsAndBoresApart() {
        List<Ties> levels = RateStretches.of(years(50, 2), 3);
        assertEquals(3 * 2, levels.get(0).count());
        Ties doubling = levels.get(1);
        assertEquals(3 * 2 * 7, doubling.count());
        int[] ends = {1, 2, 4, 8, 16, 32, 50};
        for (int variable = 0; variable < 300; variable++) {
            int bore = variable / 100;
            int season = variable % 2;
            int year = variable % 100 / 2;
            int stretch = (int) IntStream.of(ends).filter(end -> end <= year).count();
            assertEquals(bore * 14 + season * 7 + stretch, doubling.groups()[variable]);
        }
        for (int level = 1; level < levels.size(); level++) {
            assertTrue(levels.get(level).count() > levels.get(level - 1).count(), "level " + level);
        }
        assertTrue(levels.get(levels.size() - 1).areNone());
    }

    @Test
    void fewRatesAreFreeFromTheBeginning() {
        List<Ties> levels = RateStretches.of(years(5, 2), 3);
        assertEquals(1, levels.size());
        assertTrue(levels.get(0).areNone());
    }

    /** By hand: a limit that begins with year 33 of 50 begins a stretch, and stretches double from there both ways. */
    @Test
    void stretchesGrowBothWaysFromALimitThatBeginsLate() {
        List<Ties> levels = RateStretches.of(years(50, 1), 1, 33 * 365.25);
        assertEquals(2, levels.get(0).count());
        for (int year = 0; year < 50; year++) {
            assertEquals(year < 33 ? 0 : 1, levels.get(0).groups()[year], "year " + year);
        }
        int[] begins = {1, 2, 4, 8, 16, 17, 25, 29, 31, 32, 33, 34, 35, 37, 41, 49};
        assertEquals(begins.length + 1, levels.get(1).count());
        for (int year = 0; year < 50; year++) {
            int now = year;
            assertEquals(
                    IntStream.of(begins).filter(begin -> begin <= now).count(),
                    levels.get(1).groups()[year],
                    "year " + year);
        }
    }
}

package org.headfall.scenarios.interpolation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CellCentresTest {

    /** More cells than it takes for threads to be worth their start. */
    private static final CellCentres CENTRES = CellCentres.between(edges(150), edges(100));

    @Test
    void oneThreadIsTheCallingOne() {
        Set<Thread> workers = ConcurrentHashMap.newKeySet();
        CENTRES.values(seenBy(workers), 1);
        assertEquals(Set.of(Thread.currentThread()), workers);
    }

    @Test
    void noMoreThreadsThanAllowedGiveTheSameValues() {
        Set<Thread> workers = ConcurrentHashMap.newKeySet();
        assertArrayEquals(CENTRES.values((x, y) -> x + 1000 * y, 1), CENTRES.values(seenBy(workers), 3));
        assertTrue(workers.size() <= 3, workers::toString);
    }

    private static Surface seenBy(Set<Thread> workers) {
        return (x, y) -> {
            workers.add(Thread.currentThread());
            return x + 1000 * y;
        };
    }

    private static double[] edges(int cells) {
        return IntStream.rangeClosed(0, cells).asDoubleStream().toArray();
    }
}

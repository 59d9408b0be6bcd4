package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkerTeamTest {

    /** Long enough for the team's threads to go to sleep between two loops. */
    private static final long PAUSE_NANOSECONDS = 500_000;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7})
    void everyIndexIsWorkedOnOnce(int threads) {
        int[] visits = new int[1001];
        int[] once = new int[visits.length];
        int rounds = 3000;
        try (WorkerTeam team = new WorkerTeam(threads)) {
            for (int round = 0; round < rounds; round++) {
                if (round % 100 == 0) {
                    LockSupport.parkNanos(PAUSE_NANOSECONDS);
                }
                int length = visits.length - round % 3;
                team.split(length, 1 + round % 400, (from, to) -> {
                    for (int k = from; k < to; k++) {
                        visits[k]++;
                    }
                });
            }
        }
        Arrays.fill(once, rounds);
        once[1000] = rounds / 3;
        once[999] = 2 * rounds / 3;
        assertArrayEquals(once, visits);
    }

    @Test
    void aPartThatFailsIsReportedAndTheTeamWorksOn() {
        try (WorkerTeam team = new WorkerTeam(2)) {
            for (int failing : new int[] {0, 99}) {
                assertThrows(
                        RuntimeException.class,
                        () -> team.split(100, 1, (from, to) -> {
                            if (from <= failing && failing < to) {
                                throw new IllegalStateException("asked to fail");
                            }
                        }));
                int[] sum = new int[100];
                team.split(100, 1, (from, to) -> Arrays.fill(sum, from, to, 1));
                assertEquals(100, Arrays.stream(sum).sum());
            }
        }
    }

    @Test
    void aClosedTeamLeavesTheWorkToTheCaller() {
        WorkerTeam team = new WorkerTeam(3);
        team.close();
        int[] sum = new int[100];
        team.split(100, 1, (from, to) -> Arrays.fill(sum, from, to, 1));
        assertEquals(100, Arrays.stream(sum).sum());
    }
}

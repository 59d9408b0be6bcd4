package org.headfall.validation.benchmark;

import java.util.Arrays;
import org.headfall.solver.linear.WorkerTeam;

/** The triad {@code a = b + s c} of McCalpin 1995 ("Memory bandwidth and machine balance in current high performance computers"). */
final class MemoryRate {
    /** 64 MiB an array, three arrays. */
    private static final int LENGTH = 1 << 23;

    private static final int BYTES_PER_ELEMENT = 24;
    private static final int WARM_UPS = 10;
    private static final int REPEATS = 11;

    private MemoryRate() {}

    /** Returns bytes moved a second, 24 an element, by the best of several runs with a number of threads. */
    static double measure(int threads) {
        double[] a = new double[LENGTH];
        double[] b = new double[LENGTH];
        double[] c = new double[LENGTH];
        Arrays.fill(b, 1);
        Arrays.fill(c, 2);
        double best = Double.POSITIVE_INFINITY;
        try (WorkerTeam team = new WorkerTeam(threads)) {
            for (int run = 0; run < WARM_UPS + REPEATS; run++) {
                long start = System.nanoTime();
                team.split(LENGTH, 1024, (from, to) -> triad(a, b, c, from, to));
                double seconds = (System.nanoTime() - start) * 1e-9;
                best = run < WARM_UPS ? best : Math.min(best, seconds);
            }
        }
        return (double) BYTES_PER_ELEMENT * LENGTH / best;
    }

    private static void triad(double[] a, double[] b, double[] c, int from, int to) {
        for (int k = from; k < to; k++) {
            a[k] = b[k] + 3 * c[k];
        }
    }
}

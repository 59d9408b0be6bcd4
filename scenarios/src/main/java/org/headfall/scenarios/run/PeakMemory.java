package org.headfall.scenarios.run;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;

/** Largest memory that this program has held so far. */
final class PeakMemory {

    private static final Path STATUS = Path.of("/proc/self/status");
    private static final String PEAK = "VmHWM:";
    private static final long KIBIBYTE = 1024;

    private PeakMemory() {}

    /** Peak of the whole process (bytes) where the system tells it, else the sum of the peaks of the Java heap. */
    static long bytes() {
        try {
            if (Files.isReadable(STATUS)) {
                for (String line : Files.readAllLines(STATUS)) {
                    if (line.startsWith(PEAK)) {
                        return KIBIBYTE * Long.parseLong(line.replaceAll("[^0-9]", ""));
                    }
                }
            }
        } catch (IOException e) {
            return ofHeap();
        }
        return ofHeap();
    }

    private static long ofHeap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .mapToLong(pool -> pool.getPeakUsage().getUsed())
                .sum();
    }
}

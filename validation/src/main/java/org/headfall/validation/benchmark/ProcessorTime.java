package org.headfall.validation.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/** Processor time of this process, which other programs on the machine do not lengthen. */
final class ProcessorTime {

    private static final double NANO = 1e-9;

    private ProcessorTime() {}

    /** Processor time of all threads so far (s); NaN where the machine does not tell. */
    static double seconds() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean system
                ? system.getProcessCpuTime() * NANO
                : Double.NaN;
    }
}

package org.headfall.validation.benchmark;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The bars of the linear solver alone, measured with two threads in this process. */
final class LinearBars {
    private static final int THREADS = 2;

    /** Steps (d) and the bar of iterations of each. */
    private record Step(double days, Bar iterations) {}

    private static final List<Step> STEPS = List.of(
            new Step(1, Bar.ITERATIONS_OF_A_DAY),
            new Step(365, Bar.ITERATIONS_OF_A_YEAR),
            new Step(Double.POSITIVE_INFINITY, Bar.ITERATIONS_STEADY));

    private final BarSizes sizes;
    private final Optional<String> peerCommand;
    private final BarTable table;
    private final PrintWriter out;
    private final double memoryRate;

    /** Measures the memory rate, which others are held against. */
    LinearBars(BarSizes sizes, Optional<String> peerCommand, BarTable table, PrintWriter out) {
        this.sizes = sizes;
        this.peerCommand = peerCommand;
        this.table = table;
        this.out = out;
        this.memoryRate = MemoryRate.measure(THREADS);
    }

    void measure(Set<BarPart> parts) {
        if (parts.contains(BarPart.SOLVE)) {
            STEPS.forEach(this::solve);
        }
        if (parts.contains(BarPart.LARGER)) {
            STEPS.forEach(this::larger);
        }
        if (parts.contains(BarPart.VARIANTS)) {
            STEPS.forEach(this::variants);
        }
        if (parts.contains(BarPart.GROWTH)) {
            growth();
        }
        if (parts.contains(BarPart.SEVERAL)) {
            several();
        }
    }

    private void solve(Step step) {
        SolveCase solved = SolveCase.plain(sizes.n(), step.days());
        Optional<Peer> peer = peerCommand.map(Peer::new);
        SolveMeasurement measured;
        try (SolveTimer timer = new SolveTimer(solved)) {
            timer.warmUp();
            for (int round = 0; round < sizes.rounds(); round++) {
                timer.time(1);
                peer.ifPresent(other -> other.time(solved));
            }
            measured = printed(timer);
        }
        String where = "dt " + solved.step();
        table.add(Bar.OVER_MEMORY_TIME, measured.machineIndependent(), where);
        table.add(Bar.NEW_STEP, measured.refreshSeconds() / measured.solveSeconds(), where);
        table.add(Bar.BYTES_A_CELL, measured.bytesPerCell(), "n = " + sizes.n());
        table.add(step.iterations(), measured.iterations(), "");
        peer.ifPresent(other -> compare(measured, other, where));
    }

    private void compare(SolveMeasurement measured, Peer peer, String where) {
        out.printf(
                Locale.ROOT,
                "other program: %s setup_s=%.4f solve_s=%.4f%n",
                where,
                peer.setUpSeconds(),
                peer.solveSeconds());
        table.add(Bar.SOLVE_TO_PEER, measured.solveSeconds() / peer.solveSeconds(), where);
        double both = measured.setUpSeconds() + measured.solveSeconds();
        table.add(Bar.BOTH_TO_PEER, both / (peer.setUpSeconds() + peer.solveSeconds()), where);
    }

    private void larger(Step step) {
        int more = iterations(SolveCase.plain(2 * sizes.n(), step.days()))
                - iterations(SolveCase.plain(sizes.n(), step.days()));
        table.add(Bar.ITERATIONS_MORE, more, "");
    }

    private void variants(Step step) {
        for (Variant variant : Variant.values()) {
            // Drawdowns of the sealed blocks in steady state are absurd and rounding stops them above the tolerance.
            if (variant != Variant.PLAIN && !(variant == Variant.BLOCKS && Double.isInfinite(step.days()))) {
                hard(new SolveCase(sizes.hardN(), sizes.hardN(), step.days(), THREADS, 1, variant));
            }
        }
        hard(SolveCase.plain(sizes.n() - 24, step.days()));
        hard(SolveCase.plain(sizes.n() - 1, step.days()));
        hard(new SolveCase(4 * sizes.n(), Math.max(32, sizes.n() / 16), step.days(), THREADS, 1, Variant.PLAIN));
    }

    private void hard(SolveCase solved) {
        String where = solved.variant() + " " + solved.columns() + " x " + solved.rows() + ", dt " + solved.step();
        SolveMeasurement measured = once(solved);
        table.add(Bar.HARD_ITERATIONS, measured.iterations(), where);
        table.add(Bar.BYTES_OF_LINES, measured.bytesPerCell(), where);
    }

    private int iterations(SolveCase solved) {
        return once(solved).iterations();
    }

    /** One solve: iterations and bytes do not depend on warm-up. */
    private SolveMeasurement once(SolveCase solved) {
        try (SolveTimer timer = new SolveTimer(solved)) {
            timer.time(1);
            return printed(timer);
        }
    }

    private void growth() {
        SolveMeasurement small = timed(SolveCase.plain(sizes.smallN(), 1));
        SolveMeasurement large = timed(SolveCase.plain(sizes.largeN(), 1));
        double cells = Math.log((double) large.solved().cells() / small.solved().cells());
        table.add(Bar.TIME_EXPONENT, Math.log(large.solveSeconds() / small.solveSeconds()) / cells, "");
        table.add(Bar.MEMORY_EXPONENT, 1 + Math.log(large.bytesPerCell() / small.bytesPerCell()) / cells, "");
        table.add(Bar.BYTES_A_CELL, small.bytesPerCell(), "n = " + sizes.smallN());
        table.add(Bar.BYTES_A_CELL, large.bytesPerCell(), "n = " + sizes.largeN());
    }

    private void several() {
        SolveCase one = SolveCase.plain(sizes.n(), 365);
        double alone = timed(one).secondsPerSystem();
        double each = timed(one.withRightHandSides(16)).secondsPerSystem();
        table.add(Bar.EACH_OF_SIXTEEN, each / alone, "");
    }

    private SolveMeasurement timed(SolveCase solved) {
        try (SolveTimer timer = new SolveTimer(solved)) {
            timer.warmUp();
            timer.time(sizes.rounds());
            return printed(timer);
        }
    }

    private SolveMeasurement printed(SolveTimer timer) {
        SolveMeasurement measured = timer.measurement(memoryRate);
        out.println(measured.line());
        out.flush();
        return measured;
    }
}

package org.headfall.validation.benchmark;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Every figure of the linear solver that has a bar, as a table. */
@Command(
        name = "all",
        mixinStandardHelpOptions = true,
        description = "Measures every figure of the linear solver that has a bar and prints a table of both.")
final class AllCommand implements Callable<Integer> {
    private static final int N = 1024;
    private static final int ROUNDS = 7;
    private static final int HARD_N = 512;
    private static final List<Double> STEPS = List.of(1.0, 365.0, Double.POSITIVE_INFINITY);

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(
            names = "--peer",
            paramLabel = "COMMAND",
            description = "another program to compare with, called with n and dt (0 = steady); it prints"
                    + " 'setup SECONDS solve SECONDS'; without it the ratios are left out")
    private @Nullable String peerCommand;

    private double memoryRate;
    private final List<SolveMeasurement> plain = new ArrayList<>();

    @Override
    public Integer call() {
        memoryRate = MemoryRate.measure(2);
        print("triad with two threads: %.1f GB/s", memoryRate / 1e9);
        comparedWithPeer();
        singleFigures();
        iterationsOnHardVariants();
        growthWithSize();
        severalAtOnce();
        return 0;
    }

    private void print(String format, Object... values) {
        PrintWriter out = spec.commandLine().getOut();
        out.printf(Locale.ROOT, format + "%n", values);
        out.flush();
    }

    private void bar(String what, double figure, double bar) {
        print("| %-58s | %8.3f | %6.2f | %s |", what, figure, bar, figure <= bar ? "met" : "NOT MET");
    }

    private void comparedWithPeer() {
        double worstSolve = 0;
        double worstBoth = 0;
        for (double days : STEPS) {
            SolveCase solved = SolveCase.plain(N, days);
            try (SolveTimer timer = new SolveTimer(solved)) {
                timer.warmUp();
                @Nullable Peer peer = peerCommand == null ? null : new Peer(peerCommand);
                for (int round = 0; round < ROUNDS; round++) {
                    timer.time(1);
                    if (peer != null) {
                        peer.time(solved);
                    }
                }
                SolveMeasurement measured = timer.measurement(memoryRate);
                plain.add(measured);
                print("%s", measured.line());
                if (peer != null) {
                    print(
                            "peer: dt=%s setup_s=%.4f solve_s=%.4f",
                            solved.step(), peer.setUpSeconds(), peer.solveSeconds());
                    worstSolve = Math.max(worstSolve, measured.solveSeconds() / peer.solveSeconds());
                    double both = measured.setUpSeconds() + measured.solveSeconds();
                    worstBoth = Math.max(worstBoth, both / (peer.setUpSeconds() + peer.solveSeconds()));
                }
            }
        }
        if (peerCommand != null) {
            bar("solve, n = 1024, worst step: ratio to peer", worstSolve, 0.5);
            bar("set-up and solve together: ratio to peer", worstBoth, 0.65);
        }
    }

    private void singleFigures() {
        double machine = 0;
        double refresh = 0;
        double bytes = 0;
        for (SolveMeasurement measured : plain) {
            machine = Math.max(machine, measured.machineIndependent());
            refresh = Math.max(refresh, measured.refreshSeconds() / measured.solveSeconds());
            bytes = Math.max(bytes, measured.bytesPerCell());
        }
        bar("solve over time of memory, worst step", machine, 2);
        bar("set-up for a new step, in solves", refresh, 0.3);
        bar("bytes a cell in all", bytes, 150);
        int[] most = {8, 13, 14};
        for (int i = 0; i < most.length; i++) {
            int iterations = plain.get(i).iterations();
            bar("iterations, n = 1024, dt " + STEPS.get(i), iterations, most[i]);
            bar(
                    "iterations more at n = 2048",
                    once(SolveCase.plain(2 * N, STEPS.get(i))).iterations() - iterations,
                    2);
        }
    }

    /** Without warm-up, for what does not depend on it. */
    private SolveMeasurement once(SolveCase solved) {
        try (SolveTimer timer = new SolveTimer(solved)) {
            timer.time(1);
            return timer.measurement(memoryRate);
        }
    }

    private void iterationsOnHardVariants() {
        for (Variant variant : Variant.values()) {
            for (double days : STEPS) {
                // Drawdowns of the sealed blocks in steady state are absurd and rounding stops them above the
                // tolerance.
                if (variant != Variant.PLAIN && !(variant == Variant.BLOCKS && Double.isInfinite(days))) {
                    iterations(new SolveCase(HARD_N, HARD_N, days, 2, 1, variant));
                }
            }
        }
        for (double days : STEPS) {
            iterations(new SolveCase(1000, 1000, days, 2, 1, Variant.PLAIN));
            iterations(new SolveCase(1023, 1023, days, 2, 1, Variant.PLAIN));
            iterations(new SolveCase(4096, 64, days, 2, 1, Variant.PLAIN));
        }
    }

    private void iterations(SolveCase solved) {
        String what = String.format(
                Locale.ROOT,
                "iterations, %s %d x %d, dt %s",
                solved.variant(),
                solved.columns(),
                solved.rows(),
                solved.step());
        bar(what, once(solved).iterations(), 20);
    }

    private void growthWithSize() {
        SolveMeasurement small = timed(SolveCase.plain(256, 1));
        SolveMeasurement large = timed(SolveCase.plain(4096, 1));
        double cells = Math.log((double) large.solved().cells() / small.solved().cells());
        bar(
                "exponent of time, 65 thousand to 16 million cells",
                Math.log(large.solveSeconds() / small.solveSeconds()) / cells,
                1.05);
        bar("bytes a cell, 16 million cells", large.bytesPerCell(), 150);
    }

    private void severalAtOnce() {
        SolveCase one = SolveCase.plain(N, 365);
        double alone = timed(one).secondsPerSystem();
        bar(
                "16 right-hand sides at once, each against one alone",
                timed(one.withRightHandSides(16)).secondsPerSystem() / alone,
                0.8);
    }

    private SolveMeasurement timed(SolveCase solved) {
        try (SolveTimer timer = new SolveTimer(solved)) {
            timer.warmUp();
            timer.time(ROUNDS);
            SolveMeasurement measured = timer.measurement(memoryRate);
            print("%s", measured.line());
            return measured;
        }
    }
}

package org.headfall.validation.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Another program that solves the benchmark problem. It is called with n and the length of the step in days (0 for the
 * steady state) and prints {@code setup SECONDS solve SECONDS} on one line.
 */
final class Peer {
    private static final Pattern TIMES = Pattern.compile("setup ([0-9.eE+-]+) solve ([0-9.eE+-]+)");

    private final String command;
    private final Medians setUp = new Medians();
    private final Medians solve = new Medians();

    Peer(String command) {
        this.command = command;
    }

    /** Runs the program once and adds its times. */
    void time(SolveCase solved) {
        double step = Double.isInfinite(solved.days()) ? 0 : solved.days();
        String call = String.format(Locale.ROOT, "%s %d %s", command, solved.columns(), step);
        try {
            Process process = new ProcessBuilder(List.of("sh", "-c", call))
                    .redirectErrorStream(true)
                    .start();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            Matcher times = TIMES.matcher(output);
            if (process.waitFor() != 0 || !times.find()) {
                throw new IllegalStateException("'" + call + "' printed no times: " + output);
            }
            setUp.add(Double.parseDouble(times.group(1)));
            solve.add(Double.parseDouble(times.group(2)));
        } catch (IOException notStarted) {
            throw new IllegalStateException("'" + call + "' did not start", notStarted);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while '" + call + "' ran", interrupted);
        }
    }

    double setUpSeconds() {
        return setUp.median();
    }

    double solveSeconds() {
        return solve.median();
    }
}

package org.headfall.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** With how many threads a command computes. */
final class ThreadsOption {

    /** More than any processor has; far more would only start threads until memory ends. */
    private static final int MOST_THREADS = 1024;

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init") // set by picocli before the command is called
    private CommandSpec spec;

    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--threads", paramLabel = "N", description = "Threads to compute with; otherwise one a processor.")
    void setThreads(int wanted) {
        if (wanted < 1 || wanted > MOST_THREADS) {
            throw new ParameterException(
                    spec.commandLine(), "--threads must be from 1 to " + MOST_THREADS + ", found " + wanted);
        }
        threads = wanted;
    }

    int threads() {
        return threads;
    }
}

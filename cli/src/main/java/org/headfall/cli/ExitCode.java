package org.headfall.cli;

/** What the process answers to the shell. */
public enum ExitCode {
    /** Everything asked for was done. */
    DONE(0),
    /** The scenario, one of its files or the output folder is at fault; the messages say where. */
    INPUT(1),
    /** The command line could not be understood. */
    USAGE(2),
    /** A limit is crossed and {@code --fail-on-limit} was given. */
    LIMIT_CROSSED(3),
    /** The time allowed ended before all runs of a sweep were made; the same command goes on. */
    INCOMPLETE(4),
    /** All runs of a sweep were made, but some failed; the others have figures. */
    SOME_FAILED(5),
    /** Headfall itself failed. */
    FAULT(70);

    private final int code;

    ExitCode(int code) {
        this.code = code;
    }

    /** The number the shell sees. */
    public int code() {
        return code;
    }
}

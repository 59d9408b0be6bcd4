package org.headfall.cli;

import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.sweep.work.RunEngine;

/** The commands of this module, in the order in which they are listed. Each is called by its name in small letters. */
enum OwnCommand {
    ALLOCATE,
    CAPPING,
    CHECK,
    COMPARE,
    ESTIMATE,
    EXAMPLE,
    MONITOR,
    REPORT,
    RERUN,
    RUN,
    SITE,
    SPACING,
    SWEEP;

    /** What a command line calls it by, as in its annotation. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The command that a word calls; empty if it is none of this module. */
    static Optional<OwnCommand> called(String word) {
        for (OwnCommand command : values()) {
            if (command.word().equals(word)) {
                return Optional.of(command);
            }
        }
        return Optional.empty();
    }

    /**
     * A new object of it.
     *
     * @param terminal what is at the other end of the streams
     * @param engine makes the runs of a sweep
     */
    Object made(Terminal terminal, RunEngine engine) {
        return switch (this) {
            case ALLOCATE -> new AllocateCommand(terminal);
            case CAPPING -> new CappingCommand(terminal);
            case CHECK -> new CheckCommand();
            case COMPARE -> new CompareCommand();
            case ESTIMATE -> new EstimateCommand(terminal);
            case EXAMPLE -> new ExampleCommand();
            case MONITOR -> new MonitorCommand();
            case REPORT -> new ReportCommand();
            case RERUN -> new RerunCommand(terminal);
            case RUN -> new RunCommand(terminal);
            case SITE -> new SiteCommand(terminal);
            case SPACING -> new SpacingCommand(terminal);
            case SWEEP -> new SweepCommand(terminal, engine);
        };
    }
}

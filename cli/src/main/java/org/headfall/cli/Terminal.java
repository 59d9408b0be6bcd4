package org.headfall.cli;

import java.io.PrintWriter;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.LogProgress;
import org.headfall.cli.progress.Progress;
import org.headfall.cli.progress.TerminalProgress;
import picocli.CommandLine.Help.Ansi;

/**
 * What is at the other end of the output streams. The launcher finds out, because Java itself can only tell about
 * both standard streams at once.
 *
 * @param showsOutput whether standard output is a terminal
 * @param showsMessages whether standard error is a terminal
 * @param colour whether colour is wanted
 */
public record Terminal(boolean showsOutput, boolean showsMessages, boolean colour) {

    /** Files or pipes on both streams. */
    public static final Terminal NONE = new Terminal(false, false, false);

    /** What the launcher found, in the system properties {@code headfall.terminal.output} and {@code .messages}. */
    static Terminal ofProcess() {
        String noColour = System.getenv("NO_COLOR");
        return new Terminal(
                Boolean.getBoolean("headfall.terminal.output"),
                Boolean.getBoolean("headfall.terminal.messages"),
                noColour == null || noColour.isEmpty());
    }

    Ansi ansi() {
        return showsOutput && showsMessages && colour ? Ansi.ON : Ansi.OFF;
    }

    /** Writes a message: broken between words on a terminal, one line for whatever else reads it. */
    void message(PrintWriter err, String text) {
        if (showsMessages) {
            new TextBlock(err).message(text);
        } else {
            err.println(text);
        }
    }

    /** What shows progress on standard error: a line that changes on a terminal, plain lines elsewhere. */
    Progress progress(PrintWriter err) {
        return showsMessages ? new TerminalProgress(err, System::nanoTime) : new LogProgress(err, System::nanoTime);
    }
}

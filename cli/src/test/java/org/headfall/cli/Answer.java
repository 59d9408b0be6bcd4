package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * What a command answered.
 *
 * @param exitCode the number of an {@link ExitCode}
 * @param out all that it wrote to the standard output
 * @param err all that it wrote to the error output
 */
record Answer(int exitCode, String out, String err) {

    /** The answer to a command line where no terminal is at the other end. */
    static Answer headfall(String... arguments) {
        return headfall(Terminal.NONE, arguments);
    }

    /** The answer to a command line on a terminal. */
    static Answer headfall(Terminal terminal, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Headfall.execute(terminal, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
        return new Answer(code, out.toString(), err.toString());
    }

    /** This answer, after asserting its exit code. */
    Answer exits(int expected) {
        assertEquals(expected, exitCode, () -> out + err);
        return this;
    }

    /** This answer, after asserting its exit code. */
    Answer exits(ExitCode expected) {
        return exits(expected.code());
    }

    /** The standard output without its line breaks, which fall where the terminal ends. */
    String outInOneLine() {
        return inOneLine(out);
    }

    /** The error output without its line breaks. */
    String errInOneLine() {
        return inOneLine(err);
    }

    private static String inOneLine(String text) {
        return text.replaceAll("[\\s\\u00a0]+", " ");
    }
}

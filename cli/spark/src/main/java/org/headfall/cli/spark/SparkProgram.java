package org.headfall.cli.spark;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.headfall.cli.Headfall;
import org.headfall.cli.Terminal;

/** The program as {@code spark-submit} runs it: the commands of headfall, with runs of a sweep made by the cluster. */
public final class SparkProgram {

    private SparkProgram() {}

    /**
     * Runs a command and ends the process with its exit code.
     *
     * @param arguments the command line
     */
    public static void main(String[] arguments) {
        PrintWriter out = new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), true);
        PrintWriter err = new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8), true);
        int code = Headfall.execute(Terminal.NONE, new SparkEngine(), out, err, arguments);
        out.flush();
        err.flush();
        System.exit(code);
    }
}

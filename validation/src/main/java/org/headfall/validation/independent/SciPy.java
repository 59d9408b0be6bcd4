package org.headfall.validation.independent;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.headfall.validation.check.UnavailableException;

/** Has SciPy solve a system that stands in files. */
final class SciPy {

    private static final int NOT_FOUND = 127;

    private static final String PROGRAM = """
            import sys
            import scipy.io
            import scipy.sparse.linalg
            matrix = scipy.io.mmread(sys.argv[1]).tocsc()
            right = scipy.io.mmread(sys.argv[2]).ravel()
            solution = scipy.sparse.linalg.splu(matrix).solve(right)
            solution += scipy.sparse.linalg.splu(matrix).solve(right - matrix @ solution)
            print(scipy.__version__)
            for value in solution:
                print(repr(float(value)))
            """;

    /** Debian's own Python sees Debian's packages; another may stand before it on the path. */
    private static final List<String> INTERPRETERS = List.of("python3", "/usr/bin/python3");

    private SciPy() {}

    /**
     * Solves by sparse LU factors with one step of refinement.
     *
     * @param matrix file of the matrix
     * @param right file of the right-hand side
     * @return version of SciPy, then the solution
     * @throws UnavailableException if Python or SciPy is missing
     * @throws IOException if the files cannot be used
     */
    static List<String> solve(Path matrix, Path right) throws UnavailableException, IOException {
        for (String interpreter : INTERPRETERS) {
            if (run(interpreter, "import scipy").code() == 0) {
                Outcome outcome = run(interpreter, PROGRAM, matrix.toString(), right.toString());
                if (outcome.code() != 0) {
                    throw new IllegalStateException("SciPy ended with code " + outcome.code() + ": " + outcome.text());
                }
                return outcome.text().lines().toList();
            }
        }
        throw new UnavailableException("no python3 with SciPy was found (on Debian: apt-get install python3-scipy)");
    }

    /** Runs a program to its end; an interpreter that is not there gives the code a shell gives for it. */
    private static Outcome run(String interpreter, String program, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(interpreter, "-c", program));
        command.addAll(List.of(arguments));
        Process process;
        try {
            process = new ProcessBuilder(command).redirectErrorStream(true).start();
        } catch (IOException missing) {
            return new Outcome(NOT_FOUND, String.valueOf(missing.getMessage()));
        }
        try (InputStream output = process.getInputStream()) {
            String text = new String(output.readAllBytes(), StandardCharsets.UTF_8);
            return new Outcome(process.waitFor(), text);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while Python was running", interrupted);
        } finally {
            process.destroy();
        }
    }

    /** How a program ended and all it wrote. */
    private record Outcome(int code, String text) {}
}

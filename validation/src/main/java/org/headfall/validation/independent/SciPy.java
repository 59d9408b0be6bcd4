package org.headfall.validation.independent;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.validation.check.UnavailableException;

/** Has SciPy solve a system that stands in files. */
final class SciPy {

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
        Path errors = Files.createTempFile("scipy", ".txt");
        Process process;
        try {
            process = new ProcessBuilder("python3", "-c", PROGRAM, matrix.toString(), right.toString())
                    .redirectError(errors.toFile())
                    .start();
        } catch (IOException missing) {
            Files.delete(errors);
            throw new UnavailableException("python3 is not installed (on Debian: apt-get install python3-scipy)");
        }
        try (InputStream output = process.getInputStream()) {
            List<String> lines = new String(output.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            int code = process.waitFor();
            String complaint = Files.readString(errors);
            if (code != 0 && complaint.contains("ModuleNotFoundError")) {
                throw new UnavailableException("python3 has no SciPy (on Debian: apt-get install python3-scipy)");
            }
            if (code != 0) {
                throw new IllegalStateException("SciPy ended with code " + code + ": " + complaint);
            }
            return lines;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while SciPy was running", interrupted);
        } finally {
            process.destroy();
            Files.deleteIfExists(errors);
        }
    }
}

package org.headfall.validation.independent;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.solver.flow.FlowEquation;

/**
 * Writes matrices and vectors in the Matrix Market exchange format (Boisvert, Pozo and Remington 1996, NISTIR 5935),
 * with every digit of a double.
 */
final class MatrixMarket {

    private MatrixMarket() {}

    /**
     * Writes {@code weight storage + A} of a flow equation as a symmetric matrix in coordinates.
     *
     * @param equation the equation
     * @param weight weight of the storage (1/d); zero for the steady state
     * @param file file to write
     * @throws IOException if it cannot be written
     */
    static void writeMatrix(FlowEquation equation, double weight, Path file) throws IOException {
        int columns = equation.aquifer().grid().columns();
        double[] east = equation.eastConductance();
        double[] north = equation.northConductance();
        try (Writer writer = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
            writer.write("%%MatrixMarket matrix coordinate real symmetric\n");
            writer.write(equation.size() + " " + equation.size() + " " + (equation.size() + count(east) + count(north))
                    + "\n");
            for (int cell = 0; cell < equation.size(); cell++) {
                entry(writer, cell, cell, equation.diagonal()[cell] + weight * equation.storage()[cell]);
                if (east[cell] != 0) {
                    entry(writer, cell + 1, cell, -east[cell]);
                }
                if (north[cell] != 0) {
                    entry(writer, cell + columns, cell, -north[cell]);
                }
            }
        }
    }

    private static int count(double[] couplings) {
        int count = 0;
        for (double coupling : couplings) {
            count += coupling != 0 ? 1 : 0;
        }
        return count;
    }

    /** Row and column are counted from 1 in the file; of a symmetric matrix it holds the lower triangle. */
    private static void entry(Writer writer, int row, int column, double value) throws IOException {
        writer.write((row + 1) + " " + (column + 1) + " " + value + "\n");
    }

    /**
     * Writes a vector as a matrix of one column.
     *
     * @param values the vector
     * @param file file to write
     * @throws IOException if it cannot be written
     */
    static void writeVector(double[] values, Path file) throws IOException {
        try (Writer writer = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
            writer.write("%%MatrixMarket matrix array real general\n");
            writer.write(values.length + " 1\n");
            for (double value : values) {
                writer.write(value + "\n");
            }
        }
    }
}

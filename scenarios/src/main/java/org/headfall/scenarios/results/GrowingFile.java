package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFileWriter;
import ucar.nc2.Variable;

/**
 * A NetCDF-3 file (64-bit offset) that grows record by record under the name {@code FINAL.part}. After
 * {@link #endRecord} the record is on disk, so that a killed program leaves every whole record readable. Until the first
 * of them is there, the file is called {@code FINAL.begun}, so that a {@code .part} can always be read.
 */
final class GrowingFile implements AutoCloseable {

    static final float FLOAT_FILL = 9.96921e36f;
    static final double DOUBLE_FILL = 9.969209968386869e36;

    private final Path part;
    private Path current;
    private final Path target;
    private final NetcdfFileWriter writer;
    private boolean open = true;

    /** Begins a file; define dimensions and variables, then call {@link #create}. */
    GrowingFile(Path target) throws IOException {
        this.target = target;
        part = target.resolveSibling(target.getFileName() + ".part");
        current = target.resolveSibling(target.getFileName() + ".begun");
        writer = NetcdfFileWriter.createNew(NetcdfFileWriter.Version.netcdf3, current.toString());
        writer.setLargeFile(true);
        // Every value is written by us, so filling first would only write everything twice.
        writer.setFill(false);
    }

    void globals(Map<String, String> attributes) {
        attributes.forEach((name, value) -> writer.addGroupAttribute(null, new Attribute(name, value)));
    }

    void global(String name, String value) {
        writer.addGroupAttribute(null, new Attribute(name, value));
    }

    void unlimited(String name) {
        writer.addUnlimitedDimension(name);
    }

    void dimension(String name, int length) {
        writer.addDimension(null, name, length);
    }

    /** Defines a variable with text attributes, given as name, value, name, value. */
    Variable variable(String name, DataType type, String dimensions, String... attributes) {
        Variable variable = writer.addVariable(null, name, type, dimensions);
        for (int i = 0; i < attributes.length; i += 2) {
            variable.addAttribute(new Attribute(attributes[i], attributes[i + 1]));
        }
        return variable;
    }

    void create() throws IOException {
        writer.create();
    }

    /** Length that holds every name in UTF-8 bytes, at least one. */
    static int longest(List<String> names) {
        return names.stream().mapToInt(name -> name.getBytes(StandardCharsets.UTF_8).length).max().stream()
                .map(length -> Math.max(1, length))
                .findFirst()
                .orElse(1);
    }

    /** Writes names as UTF-8 bytes, padded with zeros. */
    void writeNames(Variable variable, List<String> names) throws IOException {
        int length = variable.getShape(1);
        char[] characters = new char[names.size() * length];
        for (int i = 0; i < names.size(); i++) {
            byte[] bytes = names.get(i).getBytes(StandardCharsets.UTF_8);
            for (int k = 0; k < bytes.length; k++) {
                characters[i * length + k] = (char) (bytes[k] & 0xff);
            }
        }
        write(variable, new int[] {0, 0}, Array.factory(DataType.CHAR, new int[] {names.size(), length}, characters));
    }

    void write(Variable variable, int[] origin, Array values) throws IOException {
        try {
            writer.write(variable, origin, values);
        } catch (InvalidRangeException e) {
            throw new IllegalStateException("values do not fit variable " + variable.getShortName(), e);
        }
    }

    void writeDoubles(Variable variable, int[] origin, int[] shape, double[] values) throws IOException {
        write(variable, origin, Array.factory(DataType.DOUBLE, shape, values));
    }

    void endRecord() throws IOException {
        writer.flush();
        if (!current.equals(part)) {
            takeName();
        }
    }

    /** Where open files cannot be renamed, as on Windows, the file keeps its first name until it is closed. */
    private void takeName() throws IOException {
        try {
            Files.move(current, part, StandardCopyOption.ATOMIC_MOVE);
            current = part;
        } catch (AccessDeniedException | AtomicMoveNotSupportedException openFilesStay) {
            return;
        }
    }

    /** Closes the file and gives it its final name. */
    void complete() throws IOException {
        open = false;
        writer.close();
        Files.move(current, target, StandardCopyOption.ATOMIC_MOVE);
    }

    /** Closes the file; unless completed it keeps the name {@code FINAL.part}. */
    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            writer.close();
        }
    }
}

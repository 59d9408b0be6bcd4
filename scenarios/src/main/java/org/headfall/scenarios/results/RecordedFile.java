package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ucar.ma2.Array;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** A NetCDF file of a run, read as plain arrays; fill values become NaN. */
final class RecordedFile implements AutoCloseable {

    private final Path path;
    private final NetcdfFile file;

    RecordedFile(Path path) throws IOException {
        this.path = path;
        try {
            file = NetcdfFile.open(path.toString());
        } catch (IOException e) {
            throw ResultsException.damaged(path, "is no NetCDF file any more", e);
        }
    }

    boolean has(String name) {
        return file.findVariable(name) != null;
    }

    String global(String name) throws ResultsException {
        return Optional.ofNullable(file.findGlobalAttribute(name))
                .map(Attribute::getStringValue)
                .orElseThrow(() -> missing("attribute " + name));
    }

    /** Texts of all global attributes. */
    Map<String, String> globals() {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Attribute attribute : file.getGlobalAttributes()) {
            texts.put(attribute.getShortName(), String.valueOf(attribute.getStringValue()));
        }
        return texts;
    }

    int[] shape(String name) throws ResultsException {
        return variable(name).getShape();
    }

    /** All values, in the order of the file. */
    double[] doubles(String name) throws IOException {
        Variable variable = variable(name);
        return doubles(variable, variable.read());
    }

    /** Values of one record of a variable whose first dimension is time. */
    double[] record(String name, int record) throws IOException {
        Variable variable = variable(name);
        int[] origin = new int[variable.getRank()];
        int[] shape = variable.getShape();
        origin[0] = record;
        shape[0] = 1;
        try {
            return doubles(variable, variable.read(origin, shape));
        } catch (InvalidRangeException e) {
            throw missing("record " + record + " of " + name);
        }
    }

    /** Names stored as zero-padded UTF-8 bytes. */
    List<String> names(String name) throws IOException {
        Variable variable = variable(name);
        int length = variable.getShape(1);
        char[] characters = (char[]) variable.read().copyTo1DJavaArray();
        List<String> names = new ArrayList<>();
        for (int start = 0; start < characters.length; start += length) {
            byte[] bytes = new byte[length];
            int used = 0;
            while (used < length && characters[start + used] != 0) {
                bytes[used] = (byte) characters[start + used];
                used++;
            }
            names.add(new String(bytes, 0, used, StandardCharsets.UTF_8));
        }
        return names;
    }

    private static double[] doubles(Variable variable, Array array) {
        double[] values = new double[(int) array.getSize()];
        Attribute fill = variable.findAttribute("_FillValue");
        Number fillValue = fill == null ? null : fill.getNumericValue();
        for (int i = 0; i < values.length; i++) {
            double value = array.getDouble(i);
            values[i] = fillValue != null && value == fillValue.doubleValue() ? Double.NaN : value;
        }
        return values;
    }

    private Variable variable(String name) throws ResultsException {
        Variable variable = file.findVariable(name);
        if (variable == null) {
            throw missing("variable " + name);
        }
        return variable;
    }

    private ResultsException missing(String what) {
        return ResultsException.damaged(path, what + " is missing", null);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}

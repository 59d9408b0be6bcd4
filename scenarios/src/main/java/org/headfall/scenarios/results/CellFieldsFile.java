package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.recording.RunDescription;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** A NetCDF file of fields on the grid of a run that do not change with time, beside what the aquifer is (CF conventions). */
public final class CellFieldsFile {

    private CellFieldsFile() {}

    /**
     * A field.
     *
     * @param name name of the variable
     * @param longName what it is
     * @param units its units
     * @param values one value a cell, NaN for holes
     * @param meanings for whole numbers that stand for something, one word each from 0 on; else none
     */
    @SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
    public record Field(String name, String longName, String units, double[] values, List<String> meanings) {
        /** Copies the list. */
        public Field {
            meanings = List.copyOf(meanings);
        }
    }

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param target final path
     * @param description the run
     * @param summary what the file holds, a sentence
     * @param fields the fields
     * @throws IOException if it cannot be written
     */
    public static void write(Path target, RunDescription description, String summary, List<Field> fields)
            throws IOException {
        try (GrowingFile file = new GrowingFile(target)) {
            file.globals(GlobalAttributes.of(description, summary, Instant.now()));
            GridVariables grid = GridVariables.define(file, description);
            CommonVariables.gridMapping(file, description);
            List<Variable> variables = new ArrayList<>();
            for (Field field : fields) {
                variables.add(define(file, description, field));
            }
            file.create();
            grid.write(file, description);
            int[] shape = {description.grid().rows(), description.grid().columns()};
            for (int i = 0; i < fields.size(); i++) {
                file.write(
                        variables.get(i),
                        new int[] {0, 0},
                        Array.factory(
                                DataType.FLOAT, shape, rounded(fields.get(i).values())));
            }
            file.complete();
        }
    }

    private static Variable define(GrowingFile file, RunDescription description, Field field) {
        Variable variable = file.variable(
                field.name(), DataType.FLOAT, "y x", "long_name", field.longName(), "units", field.units());
        variable.addAttribute(new Attribute("_FillValue", GrowingFile.FLOAT_FILL));
        if (!field.meanings().isEmpty()) {
            float[] flags = new float[field.meanings().size()];
            for (int i = 0; i < flags.length; i++) {
                flags[i] = i;
            }
            variable.addAttribute(
                    new Attribute("flag_values", Array.factory(DataType.FLOAT, new int[] {flags.length}, flags)));
            String words = String.join(
                    " ",
                    field.meanings().stream()
                            .map(meaning -> meaning.replaceAll("[^\\p{Alnum}]+", "_"))
                            .toList());
            variable.addAttribute(new Attribute("flag_meanings", words));
        }
        CommonVariables.placed(variable, description);
        return variable;
    }

    private static float[] rounded(double[] values) {
        float[] rounded = new float[values.length];
        for (int cell = 0; cell < values.length; cell++) {
            rounded[cell] = Double.isNaN(values[cell]) ? GrowingFile.FLOAT_FILL : (float) values[cell];
        }
        return rounded;
    }
}

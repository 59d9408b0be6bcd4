package org.headfall.scenarios.results;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** Coordinates of the grid and the fields that do not change with time. */
final class GridVariables {

    private final Variable x;
    private final Variable xBounds;
    private final Variable y;
    private final Variable yBounds;
    private final Variable status;
    private final List<Field> fields;

    @SuppressWarnings("ArrayRecordComponent") // a shared field on its way to the file, never compared
    private record Field(Variable variable, double[] values) {}

    private GridVariables(
            Variable x, Variable xBounds, Variable y, Variable yBounds, Variable status, List<Field> fields) {
        this.x = x;
        this.xBounds = xBounds;
        this.y = y;
        this.yBounds = yBounds;
        this.status = status;
        this.fields = fields;
    }

    static GridVariables define(GrowingFile file, RunDescription description) {
        file.dimension("y", description.grid().rows());
        file.dimension("x", description.grid().columns());
        file.dimension("nv", 2);
        return new GridVariables(
                axis(file, "x", "X", "easting"),
                file.variable("x_bnds", DataType.DOUBLE, "x nv"),
                axis(file, "y", "Y", "northing"),
                file.variable("y_bnds", DataType.DOUBLE, "y nv"),
                status(file, description),
                fields(file, description));
    }

    private static Variable axis(GrowingFile file, String name, String axis, String longName) {
        return file.variable(
                name,
                DataType.DOUBLE,
                name,
                "standard_name",
                "projection_" + name + "_coordinate",
                "long_name",
                longName,
                "units",
                "m",
                "axis",
                axis,
                "bounds",
                name + "_bnds");
    }

    private static Variable status(GrowingFile file, RunDescription description) {
        Variable status = file.variable(
                "cell_status",
                DataType.BYTE,
                "y x",
                "long_name",
                "whether a cell is part of the aquifer",
                "flag_meanings",
                "inactive active");
        status.addAttribute(
                new Attribute("flag_values", Array.factory(DataType.BYTE, new int[] {2}, new byte[] {0, 1})));
        CommonVariables.placed(status, description);
        return status;
    }

    private static List<Field> fields(GrowingFile file, RunDescription description) {
        Aquifer aquifer = description.aquifer();
        String aboveDatum = " above " + description.datum();
        List<Field> fields = new ArrayList<>();
        boolean isotropic = Arrays.equals(aquifer.transmissivityX(), aquifer.transmissivityY());
        fields.add(new Field(
                field(
                        file,
                        description,
                        "transmissivity",
                        isotropic ? "transmissivity" : "transmissivity along x",
                        "m2 d-1"),
                aquifer.transmissivityX()));
        if (!isotropic) {
            fields.add(new Field(
                    field(file, description, "transmissivity_y", "transmissivity along y", "m2 d-1"),
                    aquifer.transmissivityY()));
        }
        fields.add(new Field(field(file, description, "storativity", "storativity", "1"), aquifer.storativity()));
        fields.add(new Field(
                field(file, description, "aquifer_top", "top of the aquifer" + aboveDatum, "m"), aquifer.top()));
        fields.add(new Field(
                field(file, description, "aquifer_bottom", "bottom of the aquifer" + aboveDatum, "m"),
                aquifer.bottom()));
        fields.add(new Field(
                field(file, description, "ground_level", "level of the ground" + aboveDatum, "m"),
                description.ground()));
        description.sealingBed().ifPresent(bed -> {
            fields.add(new Field(
                    field(file, description, "sealing_bed_thickness", "thickness of the sealing bed", "m"),
                    bed.thickness()));
            fields.add(new Field(
                    field(
                            file,
                            description,
                            "sealing_bed_conductivity",
                            "vertical hydraulic conductivity of the sealing bed",
                            "m d-1"),
                    bed.verticalConductivity()));
            fields.add(new Field(
                    field(
                            file,
                            description,
                            "sealing_bed_specific_storage",
                            "specific storage of the sealing bed",
                            "m-1"),
                    bed.specificStorage()));
            fields.add(new Field(
                    field(
                            file,
                            description,
                            "head_above_sealing_bed",
                            "head on top of the sealing bed" + aboveDatum,
                            "m"),
                    bed.headAbove()));
        });
        return fields;
    }

    private static Variable field(
            GrowingFile file, RunDescription description, String name, String longName, String units) {
        Variable field = file.variable(
                name, DataType.FLOAT, "y x", "long_name", longName, "units", units, "cell_methods", "area: mean");
        CommonVariables.placed(field, description);
        return field;
    }

    void write(GrowingFile file, RunDescription description) throws IOException {
        writeAxis(file, x, xBounds, description.grid().x());
        writeAxis(file, y, yBounds, description.grid().y());
        int[] shape = {description.grid().rows(), description.grid().columns()};
        boolean[] active = description.aquifer().active();
        byte[] flags = new byte[active.length];
        for (int cell = 0; cell < flags.length; cell++) {
            flags[cell] = (byte) (active[cell] ? 1 : 0);
        }
        file.write(status, new int[] {0, 0}, Array.factory(DataType.BYTE, shape, flags));
        float[] rounded = new float[active.length];
        for (Field field : fields) {
            for (int cell = 0; cell < rounded.length; cell++) {
                rounded[cell] = (float) field.values[cell];
            }
            file.write(field.variable, new int[] {0, 0}, Array.factory(DataType.FLOAT, shape, rounded));
        }
    }

    private static void writeAxis(GrowingFile file, Variable centres, Variable bounds, Axis axis) throws IOException {
        int cells = axis.cells();
        double[] pairs = new double[2 * cells];
        for (int i = 0; i < cells; i++) {
            pairs[2 * i] = axis.edge(i);
            pairs[2 * i + 1] = axis.edge(i + 1);
        }
        file.writeDoubles(centres, new int[] {0}, new int[] {cells}, axis.centres());
        file.writeDoubles(bounds, new int[] {0, 0}, new int[] {cells, 2}, pairs);
    }
}

package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFileWriter;
import ucar.nc2.Variable;

/** A small CF file of packed numbers: 4 columns of 10 m from x = 1000, 3 rows of 20 m from y = 500. */
final class NetcdfSample {
    /** The value of cell i is i, except for a hole in cell 5. */
    static final double[] VALUES = {0, 1, 2, 3, 4, Double.NaN, 6, 7, 8, 9, 10, 11};

    private static final short FILL = -99;

    enum Order {
        SOUTH_TO_NORTH,
        NORTH_TO_SOUTH,
        X_OUTSIDE
    }

    private NetcdfSample() {}

    static void write(Path file, Order order) throws IOException {
        NetcdfFileWriter writer = NetcdfFileWriter.createNew(NetcdfFileWriter.Version.netcdf3, file.toString());
        writer.addDimension(null, "time", 1);
        writer.addDimension(null, "y", 3);
        writer.addDimension(null, "x", 4);
        Variable x = coordinate(writer, "x");
        Variable y = coordinate(writer, "y");
        Variable crs = writer.addVariable(null, "crs", DataType.INT, List.of());
        crs.addAttribute(new Attribute(
                "spatial_ref",
                "PROJCS[\"p\",GEOGCS[\"g\",AUTHORITY[\"EPSG\",\"4326\"]]," + "AUTHORITY[\"EPSG\",\"32755\"]]"));
        Variable top =
                writer.addVariable(null, "top", DataType.SHORT, order == Order.X_OUTSIDE ? "time x y" : "time y x");
        top.addAttribute(new Attribute("units", "m"));
        top.addAttribute(new Attribute("scale_factor", 0.5));
        top.addAttribute(new Attribute("add_offset", 1.0));
        top.addAttribute(new Attribute("_FillValue", FILL));
        top.addAttribute(new Attribute("grid_mapping", "crs"));
        Variable other = writer.addVariable(null, "other", DataType.FLOAT, "y x");
        other.addAttribute(new Attribute("units", "ft"));
        writer.create();
        try {
            writer.write(x, Array.factory(DataType.DOUBLE, new int[] {4}, new double[] {1005, 1015, 1025, 1035}));
            double[] ys = order == Order.NORTH_TO_SOUTH ? new double[] {550, 530, 510} : new double[] {510, 530, 550};
            writer.write(y, Array.factory(DataType.DOUBLE, new int[] {3}, ys));
            writer.write(top, packed(order));
            writer.write(other, Array.factory(DataType.FLOAT, new int[] {3, 4}, new float[12]));
        } catch (InvalidRangeException e) {
            throw new IllegalStateException(e);
        }
        writer.close();
    }

    private static Variable coordinate(NetcdfFileWriter writer, String axis) {
        Variable variable = writer.addVariable(null, axis, DataType.DOUBLE, axis);
        variable.addAttribute(new Attribute("standard_name", "projection_" + axis + "_coordinate"));
        variable.addAttribute(new Attribute("units", "m"));
        return variable;
    }

    private static Array packed(Order order) {
        short[] packed = new short[12];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 4; column++) {
                double value = VALUES[row * 4 + column];
                int index = switch (order) {
                    case SOUTH_TO_NORTH -> row * 4 + column;
                    case NORTH_TO_SOUTH -> (2 - row) * 4 + column;
                    case X_OUTSIDE -> column * 3 + row;
                };
                packed[index] = Double.isNaN(value) ? FILL : (short) Math.round((value - 1) / 0.5);
            }
        }
        int[] shape = order == Order.X_OUTSIDE ? new int[] {1, 4, 3} : new int[] {1, 3, 4};
        return Array.factory(DataType.SHORT, shape, packed);
    }
}

package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFileWriter;
import ucar.nc2.Variable;

/**
 * Writes a raster as NetCDF classic with the conventions CF-1.8: double precision, cells of any lengths, with their bounds;
 * so that it is read again as the same numbers.
 *
 * <p>The file appears under its name only when it is whole.
 */
public final class NetcdfRasterWriter {

    private NetcdfRasterWriter() {}

    /**
     * Writes one raster without holes.
     *
     * @param target the file, replaced if it exists
     * @param raster the values
     * @param name name of the variable
     * @param units units of the values as CF writes them
     * @throws IOException if the file cannot be written
     */
    public static void write(Path target, Raster raster, String name, String units) throws IOException {
        Path part = target.resolveSibling(target.getFileName() + ".part");
        NetcdfFileWriter file = NetcdfFileWriter.createNew(NetcdfFileWriter.Version.netcdf3, part.toString());
        try {
            file.addGroupAttribute(null, new Attribute("Conventions", "CF-1.8"));
            file.addDimension(null, "y", raster.rows());
            file.addDimension(null, "x", raster.columns());
            file.addDimension(null, "nv", 2);
            Variable x = axis(file, "x");
            Variable xBounds = file.addVariable(null, "x_bnds", DataType.DOUBLE, "x nv");
            Variable y = axis(file, "y");
            Variable yBounds = file.addVariable(null, "y_bnds", DataType.DOUBLE, "y nv");
            Variable values = file.addVariable(null, name, DataType.DOUBLE, "y x");
            values.addAttribute(new Attribute("units", units));
            file.create();
            writeAxis(file, x, xBounds, raster.edgesX());
            writeAxis(file, y, yBounds, raster.edgesY());
            write(file, values, raster.values(), raster.rows(), raster.columns());
        } finally {
            file.close();
        }
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    }

    private static Variable axis(NetcdfFileWriter file, String name) {
        Variable axis = file.addVariable(null, name, DataType.DOUBLE, name);
        axis.addAttribute(new Attribute("standard_name", "projection_" + name + "_coordinate"));
        axis.addAttribute(new Attribute("units", "m"));
        axis.addAttribute(new Attribute("bounds", name + "_bnds"));
        return axis;
    }

    private static void writeAxis(NetcdfFileWriter file, Variable centres, Variable bounds, double[] edges)
            throws IOException {
        int cells = edges.length - 1;
        double[] middles = new double[cells];
        double[] pairs = new double[2 * cells];
        for (int i = 0; i < cells; i++) {
            middles[i] = 0.5 * (edges[i] + edges[i + 1]);
            pairs[2 * i] = edges[i];
            pairs[2 * i + 1] = edges[i + 1];
        }
        write(file, centres, middles, cells);
        write(file, bounds, pairs, cells, 2);
    }

    private static void write(NetcdfFileWriter file, Variable variable, double[] values, int... shape)
            throws IOException {
        try {
            file.write(variable, Array.factory(DataType.DOUBLE, shape, values));
        } catch (InvalidRangeException e) {
            throw new IllegalStateException("values do not fit variable " + variable.getShortName(), e);
        }
    }
}

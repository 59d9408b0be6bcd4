package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import ucar.ma2.Array;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;
import ucar.unidata.io.RandomAccessFile;

/**
 * CF NetCDF: a variable over x and y, in either order and either sense. Further dimensions must have length 1.
 */
final class NetcdfDecoder implements RasterDecoder {

    @Override
    public RasterFile decode(Path file, @Nullable String layer, RasterLimits limits) throws IOException {
        try {
            return open(file, layer, limits);
        } catch (SpatialFormatException e) {
            throw e;
        } catch (RuntimeException | InvalidRangeException e) {
            throw NetcdfClassicGuard.damaged(file, "a NetCDF file that cannot be decoded (" + e + ")")
                    .causedBy(e);
        } catch (OutOfMemoryError | StackOverflowError e) {
            // The library reserves and descends as a damaged HDF5 header asks; nothing of it is kept.
            throw NetcdfClassicGuard.damaged(file, "a NetCDF file whose header asks for too much memory")
                    .causedBy(e);
        }
    }

    private static RasterFile open(Path file, @Nullable String layer, RasterLimits limits)
            throws IOException, InvalidRangeException {
        RandomAccessFile bytes = new RandomAccessFile(file.toString(), "r");
        try {
            boolean classic = bytes.readByte() == 'C';
            if (classic) {
                NetcdfClassicGuard.requireWhole(file);
            }
            bytes.seek(0);
            // Opened by its bytes, since by its name the library would unpack or fetch what only looks like an archive
            // or an address.
            try (NetcdfFile netcdf = NetcdfFile.open(bytes, file.toString(), null, null)) {
                return read(file, netcdf, layer, limits);
            }
        } finally {
            bytes.close();
        }
    }

    private static RasterFile read(Path file, NetcdfFile netcdf, @Nullable String layer, RasterLimits limits)
            throws IOException, InvalidRangeException {
        List<Variable> maps = maps(netcdf);
        Variable variable = choose(file, maps, layer);
        NetcdfAxis axisX = NetcdfAxis.read(file, netcdf, variable, NetcdfAxis.Direction.X);
        NetcdfAxis axisY = NetcdfAxis.read(file, netcdf, variable, NetcdfAxis.Direction.Y);
        int cells = limits.requireCells(file, axisX.cells(), axisY.cells());
        if (variable.getSize() != cells) {
            throw SpatialFormatException.of(
                    file,
                    "variable " + variable.getFullName() + " over " + variable.getDimensionsString(),
                    "one value a cell: dimensions besides x and y must have length 1");
        }
        Array stored = variable.read();
        double[] values = arrange(new PackedValues(file, variable), stored, axisX, axisY);
        Raster raster = new Raster(axisX.edges(), axisY.edges(), values);
        return new RasterFile(file, raster, NetcdfReference.epsgCode(netcdf, variable), unit(variable));
    }

    private static Optional<String> unit(Variable variable) {
        Attribute units = variable.findAttribute("units");
        return Optional.ofNullable(units == null ? null : units.getStringValue());
    }

    /** Numeric variables over an x and a y axis, coordinates and bounds left out. */
    private static List<Variable> maps(NetcdfFile netcdf) {
        List<Variable> maps = new ArrayList<>();
        for (Variable variable : netcdf.getVariables()) {
            boolean numeric = variable.getDataType().isNumeric();
            if (numeric
                    && NetcdfAxis.find(netcdf, variable, NetcdfAxis.Direction.X).isPresent()
                    && NetcdfAxis.find(netcdf, variable, NetcdfAxis.Direction.Y).isPresent()) {
                maps.add(variable);
            }
        }
        return maps;
    }

    private static Variable choose(Path file, List<Variable> maps, @Nullable String layer) {
        List<String> names = maps.stream().map(Variable::getFullName).toList();
        if (maps.isEmpty()) {
            throw SpatialFormatException.of(
                    file,
                    "no variable over x and y",
                    "a variable over axes with standard names projection_x_coordinate "
                            + "and projection_y_coordinate, attribute axis X and Y, or the names x and y");
        }
        if (layer == null) {
            if (maps.size() > 1) {
                throw SpatialFormatException.of(file, "several variables", "one of " + names + " as the layer");
            }
            return maps.get(0);
        }
        int index = names.indexOf(layer);
        if (index < 0) {
            throw SpatialFormatException.of(file, "no variable \"" + layer + "\" over x and y", "one of " + names);
        }
        return maps.get(index);
    }

    private static double[] arrange(PackedValues packed, Array stored, NetcdfAxis axisX, NetcdfAxis axisY) {
        int columns = axisX.cells();
        int rows = axisY.cells();
        boolean columnsRunFast = axisX.dimension() > axisY.dimension();
        double[] values = new double[columns * rows];
        for (int row = 0; row < rows; row++) {
            int storedRow = axisY.ascending() ? row : rows - 1 - row;
            for (int column = 0; column < columns; column++) {
                int storedColumn = axisX.ascending() ? column : columns - 1 - column;
                int index = columnsRunFast ? storedRow * columns + storedColumn : storedColumn * rows + storedRow;
                values[row * columns + column] = packed.value(stored.getDouble(index));
            }
        }
        return values;
    }
}

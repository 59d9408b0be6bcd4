package org.headfall.scenarios.raster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import ucar.ma2.Array;
import ucar.nc2.Attribute;
import ucar.nc2.Dimension;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** One horizontal axis of a NetCDF variable (CF 1.8, chapters 4 and 7.1). */
final class NetcdfAxis {
    private static final Set<String> METRE = Set.of("", "m", "metre", "metres", "meter", "meters");
    private static final Set<String> KILOMETRE = Set.of("km", "kilometre", "kilometres", "kilometer", "kilometers");

    /** The two axes of the plane, and how files tell them apart. */
    enum Direction {
        X("projection_x_coordinate", "longitude", "x|easting|lon|longitude"),
        Y("projection_y_coordinate", "latitude", "y|northing|lat|latitude");

        private final String projected;
        private final String geographic;
        private final String names;

        Direction(String projected, String geographic, String names) {
            this.projected = projected;
            this.geographic = geographic;
            this.names = names;
        }

        boolean matches(Variable coordinate) {
            String standardName = text(coordinate, "standard_name");
            String axis = text(coordinate, "axis");
            if (!standardName.isEmpty()) {
                return standardName.equals(projected) || standardName.equals(geographic);
            }
            if (!axis.isEmpty()) {
                return axis.equalsIgnoreCase(name());
            }
            return coordinate.getShortName().toLowerCase(Locale.ROOT).matches(names);
        }
    }

    private final int dimension;
    private final boolean ascending;
    private final double[] edges;

    private NetcdfAxis(int dimension, boolean ascending, double[] edges) {
        this.dimension = dimension;
        this.ascending = ascending;
        this.edges = edges;
    }

    /** The number of the dimension in the variable. */
    int dimension() {
        return dimension;
    }

    /** Whether the file runs from west to east, or from south to north. */
    boolean ascending() {
        return ascending;
    }

    /** Ascending cell edges (m): from the bounds where given, else halfway between centres. */
    double[] edges() {
        return edges;
    }

    int cells() {
        return edges.length - 1;
    }

    /** The coordinate variable of a variable along one direction, if it has one. */
    static Optional<Variable> find(NetcdfFile netcdf, Variable variable, Direction direction) {
        for (Dimension dimension : variable.getDimensions()) {
            for (Variable candidate : netcdf.getVariables()) {
                boolean coordinate = candidate.getRank() == 1
                        && candidate.getDataType().isNumeric()
                        && candidate.getDimension(0).equals(dimension)
                        && candidate.getShortName().equals(dimension.getShortName());
                if (coordinate && direction.matches(candidate)) {
                    return Optional.of(candidate);
                }
            }
        }
        return Optional.empty();
    }

    /** Reads the axis of a variable that has one. */
    static NetcdfAxis read(Path file, NetcdfFile netcdf, Variable variable, Direction direction) throws IOException {
        Variable coordinate = find(netcdf, variable, direction).orElseThrow();
        double scale = metres(file, coordinate);
        double[] centres = scaled(coordinate.read(), scale);
        boolean ascending = centres.length < 2 || centres[1] > centres[0];
        double[] edges = edges(file, netcdf, coordinate, centres, scale);
        int dimension = variable.getDimensions().indexOf(coordinate.getDimension(0));
        return new NetcdfAxis(dimension, ascending, ascending ? edges : reversed(edges));
    }

    private static double metres(Path file, Variable coordinate) {
        String unit = text(coordinate, "units");
        if (METRE.contains(unit)) {
            return 1;
        }
        if (KILOMETRE.contains(unit)) {
            return 1000;
        }
        String found = unit.startsWith("degree") ? "coordinates in degrees" : "coordinates in \"" + unit + "\"";
        throw SpatialFormatException.of(
                file,
                found + " (variable " + coordinate.getShortName() + ")",
                "projected coordinates in m or km; reproject the raster to the reference system of the scenario");
    }

    private static double[] edges(Path file, NetcdfFile netcdf, Variable coordinate, double[] centres, double scale)
            throws IOException {
        Variable bounds = bounds(netcdf, coordinate);
        if (bounds != null
                && bounds.getRank() == 2
                && bounds.getShape(0) == centres.length
                && bounds.getShape(1) == 2) {
            return edgesFromBounds(scaled(bounds.read(), scale), centres);
        }
        if (centres.length < 2) {
            throw SpatialFormatException.of(
                    file,
                    "a single value of " + coordinate.getShortName() + " without bounds",
                    "at least two coordinates, or cell bounds");
        }
        return edgesBetween(centres);
    }

    private static @Nullable Variable bounds(NetcdfFile netcdf, Variable coordinate) {
        String name = text(coordinate, "bounds");
        for (Variable candidate : netcdf.getVariables()) {
            if (candidate.getShortName().equals(name)) {
                return candidate;
            }
        }
        return null;
    }

    /** Edges in the sense of the file; each pair may stand in either order (files differ). */
    private static double[] edgesFromBounds(double[] bounds, double[] centres) {
        int cells = centres.length;
        boolean ascending = cells < 2 || centres[1] > centres[0];
        double[] edges = new double[cells + 1];
        for (int i = 0; i < cells; i++) {
            double low = Math.min(bounds[2 * i], bounds[2 * i + 1]);
            double high = Math.max(bounds[2 * i], bounds[2 * i + 1]);
            edges[i] = ascending ? low : high;
            edges[i + 1] = ascending ? high : low;
        }
        return edges;
    }

    private static double[] edgesBetween(double[] centres) {
        int cells = centres.length;
        double[] edges = new double[cells + 1];
        for (int i = 1; i < cells; i++) {
            edges[i] = 0.5 * (centres[i - 1] + centres[i]);
        }
        edges[0] = 2 * centres[0] - edges[1];
        edges[cells] = 2 * centres[cells - 1] - edges[cells - 1];
        return edges;
    }

    private static double[] scaled(Array array, double scale) {
        double[] values = new double[(int) array.getSize()];
        for (int i = 0; i < values.length; i++) {
            values[i] = scale * array.getDouble(i);
        }
        return values;
    }

    private static double[] reversed(double[] values) {
        double[] reversed = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            reversed[i] = values[values.length - 1 - i];
        }
        return reversed;
    }

    private static String text(Variable variable, String name) {
        Attribute attribute = variable.findAttribute(name);
        String value = attribute == null ? null : attribute.getStringValue();
        return value == null ? "" : value.trim();
    }
}

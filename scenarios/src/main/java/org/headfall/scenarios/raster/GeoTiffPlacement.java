package org.headfall.scenarios.raster;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import mil.nga.tiff.FieldTagType;
import mil.nga.tiff.FileDirectory;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * Where a GeoTIFF says it lies (OGC GeoTIFF 1.1, 19-008r4, clause 7 and annexes B and C).
 *
 * @param west western edge of the first column (m)
 * @param north northern edge of the first row (m)
 * @param width length of a cell along x (m)
 * @param height length of a cell along y (m)
 * @param epsgCode code of the projected reference system, if stated
 * @param verticalUnit unit of heights, if stated
 */
record GeoTiffPlacement(
        double west, double north, double width, double height, OptionalInt epsgCode, Optional<String> verticalUnit) {
    static final int MODEL_TYPE = 1024;
    static final int MODEL_PROJECTED = 1;
    static final int RASTER_TYPE = 1025;
    static final int PIXEL_IS_AREA = 1;
    static final int PROJECTED_SYSTEM = 3072;
    static final int PROJECTED_LINEAR_UNIT = 3076;
    static final int METRE = 9001;
    private static final int MODEL_GEOGRAPHIC = 2;
    private static final int MODEL_GEOCENTRIC = 3;
    private static final int PIXEL_IS_POINT = 2;
    private static final int VERTICAL_UNIT = 4099;
    private static final int USER_DEFINED = 32767;
    private static final String NORTH_UP = "a raster with rows from north to south and columns from west to east";

    static GeoTiffPlacement of(Path file, FileDirectory directory) {
        Map<Integer, Integer> keys = shortKeys(directory);
        requireProjectedMetres(file, keys);
        double[] corner = corner(file, directory);
        double shift = keys.getOrDefault(RASTER_TYPE, PIXEL_IS_AREA) == PIXEL_IS_POINT ? 0.5 : 0;
        double width = corner[2];
        double height = corner[3];
        int code = keys.getOrDefault(PROJECTED_SYSTEM, USER_DEFINED);
        return new GeoTiffPlacement(
                corner[0] - shift * width,
                corner[1] + shift * height,
                width,
                height,
                code == USER_DEFINED || code == 0 ? OptionalInt.empty() : OptionalInt.of(code),
                verticalUnit(keys));
    }

    /** West, north, width and height as the tags have them, the raster type not yet considered. */
    private static double[] corner(Path file, FileDirectory directory) {
        List<Double> matrix = directory.getDoubleListEntryValue(FieldTagType.ModelTransformation);
        List<Double> scale = directory.getModelPixelScale();
        List<Double> tie = directory.getModelTiepoint();
        double[] corner;
        if (scale != null && tie != null && scale.size() >= 2 && tie.size() >= 6) {
            corner = new double[] {
                tie.get(3) - tie.get(0) * scale.get(0),
                tie.get(4) + tie.get(1) * scale.get(1),
                scale.get(0),
                scale.get(1)
            };
        } else if (matrix != null && matrix.size() >= 8) {
            if (matrix.get(1) != 0 || matrix.get(4) != 0) {
                throw SpatialFormatException.of(file, "a rotated raster", NORTH_UP);
            }
            corner = new double[] {matrix.get(3), matrix.get(7), matrix.get(0), -matrix.get(5)};
        } else {
            String found =
                    tie != null ? "control points instead of a lattice" : "a TIFF that does not say where it lies";
            throw SpatialFormatException.of(file, found, "a GeoTIFF with pixel scale and tie point");
        }
        requireNorthUp(file, corner);
        return corner;
    }

    private static void requireNorthUp(Path file, double[] corner) {
        if (!(corner[2] > 0 && corner[3] > 0)) {
            throw SpatialFormatException.of(
                    file,
                    "cells of " + PlainNumber.of(corner[2]) + " by " + PlainNumber.of(corner[3]) + " m",
                    NORTH_UP);
        }
        if (!Double.isFinite(corner[0] + corner[1] + corner[2] + corner[3])) {
            throw SpatialFormatException.of(file, "a corner or a cell size that is not finite", NORTH_UP);
        }
    }

    private static void requireProjectedMetres(Path file, Map<Integer, Integer> keys) {
        int model = keys.getOrDefault(MODEL_TYPE, MODEL_PROJECTED);
        if (model == MODEL_GEOGRAPHIC || model == MODEL_GEOCENTRIC) {
            throw SpatialFormatException.of(
                    file,
                    model == MODEL_GEOGRAPHIC ? "coordinates in degrees" : "geocentric coordinates",
                    "projected coordinates in metres; reproject the raster to the reference system of the scenario");
        }
        int unit = keys.getOrDefault(PROJECTED_LINEAR_UNIT, METRE);
        if (unit != METRE) {
            throw SpatialFormatException.of(file, "coordinates in EPSG unit " + unit, "coordinates in metres (9001)");
        }
    }

    private static Optional<String> verticalUnit(Map<Integer, Integer> keys) {
        @Nullable Integer code = keys.get(VERTICAL_UNIT);
        if (code == null || code == USER_DEFINED) {
            return Optional.empty();
        }
        return Optional.of(code == METRE ? "m" : "EPSG unit " + code);
    }

    /** The keys whose value stands in the directory itself. */
    private static Map<Integer, Integer> shortKeys(FileDirectory directory) {
        Map<Integer, Integer> keys = new HashMap<>();
        List<Integer> entries = directory.getIntegerListEntryValue(FieldTagType.GeoKeyDirectory);
        if (entries != null) {
            for (int i = 4; i + 3 < entries.size(); i += 4) {
                if (entries.get(i + 1) == 0) {
                    keys.put(entries.get(i), entries.get(i + 3));
                }
            }
        }
        return keys;
    }
}

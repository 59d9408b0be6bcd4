package org.headfall.scenarios.raster;

import java.nio.file.Path;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/**
 * What the stored numbers of a NetCDF variable mean (CF 1.8, sections 2.5.1 and 8.1): missing values and valid range
 * apply to the stored number, then {@code stored * scale_factor + add_offset}.
 */
final class PackedValues {
    /** Default fill values of the NetCDF library, by which never written cells of floats can be known. */
    private static final double DEFAULT_FILL = 9.969209968386869e36;

    private final Path file;
    private final double unsignedRange;
    private final double scale;
    private final double offset;
    private final double[] missing;
    private final double least;
    private final double greatest;

    PackedValues(Path file, Variable variable) {
        this.file = file;
        this.unsignedRange = unsignedRange(variable);
        this.scale = number(variable, "scale_factor", 1);
        this.offset = number(variable, "add_offset", 0);
        this.missing = new double[] {
            unsigned(number(variable, "_FillValue", isFloating(variable) ? DEFAULT_FILL : Double.NaN)),
            unsigned(number(variable, "missing_value", Double.NaN))
        };
        Attribute range = variable.findAttribute("valid_range");
        boolean both = range != null && range.getLength() == 2;
        this.least = unsigned(both ? numeric(range, 0) : number(variable, "valid_min", Double.NEGATIVE_INFINITY));
        this.greatest = unsigned(both ? numeric(range, 1) : number(variable, "valid_max", Double.POSITIVE_INFINITY));
    }

    /** The value of a stored number, NaN for a hole. */
    double value(double storedNumber) {
        double stored = unsigned(storedNumber);
        if (stored == missing[0] || stored == missing[1] || !(stored >= least && stored <= greatest)) {
            return Double.NaN;
        }
        double value = stored * scale + offset;
        if (Double.isInfinite(value)) {
            throw SpatialFormatException.of(file, "an infinite value", "finite values, or the fill value");
        }
        return value;
    }

    private double unsigned(double stored) {
        return stored < 0 && unsignedRange > 0 && Double.isFinite(stored) ? stored + unsignedRange : stored;
    }

    /** 256 for bytes that are meant without sign, and so on; 0 if the sign counts. */
    private static double unsignedRange(Variable variable) {
        Attribute attribute = variable.findAttribute("_Unsigned");
        boolean marked = attribute != null && "true".equals(attribute.getStringValue());
        if (!marked && !variable.isUnsigned()) {
            return 0;
        }
        return Math.pow(2, 8.0 * variable.getElementSize());
    }

    private static boolean isFloating(Variable variable) {
        return variable.getDataType() == DataType.FLOAT || variable.getDataType() == DataType.DOUBLE;
    }

    private double number(Variable variable, String name, double absent) {
        Attribute attribute = variable.findAttribute(name);
        return attribute == null || attribute.getLength() == 0 ? absent : numeric(attribute, 0);
    }

    private double numeric(Attribute attribute, int index) {
        @Nullable Number number = attribute.getNumericValue(index);
        if (number == null) {
            throw SpatialFormatException.of(
                    file, "attribute " + attribute.getShortName() + " that is not a number", "a number");
        }
        return number.doubleValue();
    }
}

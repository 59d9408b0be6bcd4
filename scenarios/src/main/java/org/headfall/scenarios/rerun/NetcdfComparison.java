package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** Compares two NetCDF files variable by variable, one record in memory at a time. */
final class NetcdfComparison {

    private final Tally tally = new Tally();

    FileComparison of(Path before, Path now) throws IOException {
        try {
            compare(before, now);
        } catch (RuntimeException e) {
            throw new IOException("no NetCDF file can be read from it", e); // the library's ways to say so are many
        }
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compare(Path before, Path now) throws IOException {
        try (NetcdfFile fileBefore = NetcdfFile.open(before.toString());
                NetcdfFile fileNow = NetcdfFile.open(now.toString())) {
            // places come from the new file, which is whole
            NetcdfPlaces places = new NetcdfPlaces(fileNow);
            for (Variable variable : fileBefore.getVariables()) {
                Variable other = fileNow.findVariable(variable.getFullName());
                if (other == null) {
                    tally.differs(variable.getFullName(), "there", "missing");
                } else {
                    compare(variable, other, places);
                }
            }
            for (Variable variable : fileNow.getVariables()) {
                if (fileBefore.findVariable(variable.getFullName()) == null) {
                    tally.differs(variable.getFullName(), "missing", "there");
                }
            }
        }
    }

    private void compare(Variable before, Variable now, NetcdfPlaces places) throws IOException {
        if (before.getDataType() != now.getDataType() || !Arrays.equals(before.getShape(), now.getShape())) {
            tally.differs(
                    "kind and size of " + before.getFullName(),
                    before.getDataType() + " " + Arrays.toString(before.getShape()),
                    now.getDataType() + " " + Arrays.toString(now.getShape()));
        } else if (before.getDataType() == DataType.CHAR) {
            compareTexts(before, now);
        } else if (before.getRank() == 0) {
            compareNumbers(before, before.read(), now.read(), new int[0], places);
        } else {
            for (int record = 0; record < before.getShape(0); record++) {
                int[] origin = new int[before.getRank()];
                origin[0] = record;
                compareNumbers(before, part(before, origin), part(now, origin), origin, places);
            }
        }
    }

    private static Array part(Variable variable, int[] origin) throws IOException {
        int[] shape = variable.getShape();
        shape[0] = 1;
        try {
            return variable.read(origin, shape);
        } catch (InvalidRangeException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private void compareTexts(Variable before, Variable now) throws IOException {
        tally.texts(
                NetcdfPlaces.text(before.read()),
                NetcdfPlaces.text(now.read()),
                () -> "names in " + before.getFullName());
    }

    /** A value that stands for none is the same in both files, so it needs no care. */
    private void compareNumbers(Variable variable, Array before, Array now, int[] origin, NetcdfPlaces places) {
        int[] shape = before.getShape();
        for (int i = 0; i < before.getSize(); i++) {
            double value = before.getDouble(i);
            double valueNow = now.getDouble(i);
            if (Double.compare(value, valueNow) == 0) {
                tally.same();
            } else {
                int[] index = index(i, shape, origin);
                tally.numbers(value, valueNow, () -> places.words(variable, index));
            }
        }
    }

    /** Where a value of a part of a variable stands in the whole. */
    private static int[] index(int at, int[] shape, int[] origin) {
        int[] index = origin.clone();
        int rest = at;
        for (int dimension = shape.length - 1; dimension >= 0; dimension--) {
            index[dimension] += rest % shape[dimension];
            rest /= shape[dimension];
        }
        return index;
    }
}

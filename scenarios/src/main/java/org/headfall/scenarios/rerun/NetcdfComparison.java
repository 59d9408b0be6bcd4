package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.ma2.InvalidRangeException;
import ucar.nc2.Attribute;
import ucar.nc2.NetcdfFile;
import ucar.nc2.Variable;

/** Compares two NetCDF files attribute by attribute and variable by variable, one record in memory at a time. */
final class NetcdfComparison {

    /** When a file was written says nothing about the results. */
    private static final Set<String> OF_THE_WRITING = Set.of("date_created", "history");

    private final Tally tally = new Tally();
    private final UnaryOperator<String> versionNow;

    /**
     * A comparison.
     *
     * @param versionNow puts the version of the program that runs in place of that which made the results
     */
    NetcdfComparison(UnaryOperator<String> versionNow) {
        this.versionNow = versionNow;
    }

    FileComparison of(Path before, Path now) throws IOException {
        try (NetcdfFile fileBefore = UnreadableException.ifNotRead(() -> NetcdfFile.open(before.toString()));
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
            // last, for a number that differs tells more
            compareAttributes("", fileBefore.getGlobalAttributes(), fileNow.getGlobalAttributes());
        }
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compareAttributes(String of, List<Attribute> before, List<Attribute> now) {
        Map<String, String> kept = values(before);
        Map<String, String> again = values(now);
        Set<String> names = new TreeSet<>(kept.keySet());
        names.addAll(again.keySet());
        names.removeAll(OF_THE_WRITING);
        for (String name : names) {
            String where = "attribute " + name + of;
            String value = kept.get(name);
            String valueNow = again.get(name);
            if (value == null || valueNow == null) {
                tally.differs(where, value == null ? "missing" : value, valueNow == null ? "missing" : valueNow);
            } else {
                tally.texts(versionNow.apply(value), valueNow, () -> where);
            }
        }
    }

    private static Map<String, String> values(List<Attribute> attributes) {
        return attributes.stream()
                .collect(Collectors.toMap(
                        Attribute::getShortName,
                        attribute -> IntStream.range(0, attribute.getLength())
                                .mapToObj(i -> String.valueOf(attribute.getValue(i)))
                                .collect(Collectors.joining(", ")),
                        (first, again) -> first + ", " + again));
    }

    private void compare(Variable before, Variable now, NetcdfPlaces places) throws IOException {
        compareAttributes(" of " + before.getFullName(), before.getAttributes(), now.getAttributes());
        if (before.getDataType() != now.getDataType() || !Arrays.equals(before.getShape(), now.getShape())) {
            tally.differs(
                    "kind and size of " + before.getFullName(),
                    before.getDataType() + " " + Arrays.toString(before.getShape()),
                    now.getDataType() + " " + Arrays.toString(now.getShape()));
        } else if (before.getDataType() == DataType.CHAR) {
            compareTexts(before, now);
        } else if (before.getRank() == 0) {
            compareNumbers(before, UnreadableException.ifNotRead(before::read), now.read(), new int[0], places);
        } else {
            for (int record = 0; record < before.getShape(0); record++) {
                int[] origin = new int[before.getRank()];
                origin[0] = record;
                compareNumbers(
                        before,
                        UnreadableException.ifNotRead(() -> part(before, origin)),
                        part(now, origin),
                        origin,
                        places);
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
                NetcdfPlaces.text(UnreadableException.ifNotRead(before::read)),
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

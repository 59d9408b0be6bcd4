package org.headfall.scenarios.reading;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.randomfield.CorrelationModel;
import org.headfall.scenarios.randomfield.Covariance;
import org.headfall.scenarios.randomfield.KnownValue;
import org.headfall.scenarios.randomfield.LognormalField;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code {random: {median: 250 m2/d, deviation_of_log: 0.8, variogram: exponential, range: 8 km}}}, perhaps with
 * {@code along_over_across: 4, direction: 30 deg}, {@code points: tests.csv, column: T}, {@code seed: 2026} and
 * {@code number: 17}.
 */
final class RandomFieldReader {

    /** A factor of e^5 = 150 one deviation off: more is a slip of the finger. Common practice, no source. */
    private static final AllowedRange DEVIATION_OF_LOG = AllowedRange.positiveUpTo(5);

    private static final AllowedRange RATIO_OF_RANGES = AllowedRange.between(1, 1000);
    private static final AllowedRange DIRECTION = AllowedRange.between(-360, 360);
    private static final AllowedRange SEED = AllowedRange.between(Integer.MIN_VALUE, Integer.MAX_VALUE);
    private static final AllowedRange NUMBER = AllowedRange.between(1, Integer.MAX_VALUE);
    private static final Map<String, CorrelationModel> MODELS = new TreeMap<>(Map.of(
            "exponential",
            CorrelationModel.EXPONENTIAL,
            "spherical",
            CorrelationModel.SPHERICAL,
            "gaussian",
            CorrelationModel.GAUSSIAN));

    private final Inputs inputs;
    private final MapArea area;

    RandomFieldReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    @Nullable
    Field read(Section outer, Dimension dimension, AllowedRange range) {
        @Nullable Section section = outer.section("random");
        if (section == null) {
            return null;
        }
        @Nullable Quantity median = section.quantity("median", dimension, range);
        if (median != null && !(median.value() > 0)) {
            section.refuse("median", Finding.of(ProblemKind.OUT_OF_RANGE, median.text(), "more than zero"));
        }
        @Nullable Covariance covariance = covariance(section);
        @Nullable List<KnownValue> known = known(section, dimension, range);
        @Nullable Long seed = whole(section, "seed", SEED);
        @Nullable Long number = whole(section, "number", NUMBER);
        section.done();
        return median == null
                        || !(median.value() > 0)
                        || covariance == null
                        || known == null
                        || seed == null
                        || number == null
                ? null
                : new Field.Random(
                        outer.nameOf("random"),
                        outer.placeOf("random"),
                        new LognormalField(median.value(), covariance, known),
                        dimension.unit(),
                        seed,
                        number.intValue());
    }

    private static @Nullable Covariance covariance(Section section) {
        @Nullable Quantity deviation = section.quantity("deviation_of_log", Dimension.NUMBER, DEVIATION_OF_LOG);
        @Nullable CorrelationModel model = section.choice("variogram", MODELS);
        @Nullable Quantity range = section.quantity("range", Dimension.LENGTH, ValueRanges.VARIOGRAM_RANGE);
        boolean hasRatio = section.has("along_over_across");
        boolean hasDirection = section.has("direction");
        if (hasRatio != hasDirection) {
            String missing = hasRatio ? "direction" : "along_over_across";
            section.values()
                    .problems()
                    .add(
                            section.place(),
                            section.nameOf(missing),
                            Finding.of(
                                    ProblemKind.MISSING_KEY,
                                    "only " + (hasRatio ? "along_over_across" : "direction"),
                                    "along_over_across and direction, or neither of them"));
            return null;
        }
        @Nullable Quantity ratio = section.optionalQuantity("along_over_across", Dimension.NUMBER, RATIO_OF_RANGES);
        @Nullable Quantity direction = section.optionalQuantity("direction", Dimension.ANGLE, DIRECTION);
        if (deviation == null || model == null || range == null || (hasRatio && (ratio == null || direction == null))) {
            return null;
        }
        return new Covariance(
                model,
                deviation.value() * deviation.value(),
                range.value(),
                ratio == null ? 1 : ratio.value(),
                direction == null ? 0 : direction.value());
    }

    /** The values that the field has to keep; null after a problem has been reported. */
    private @Nullable List<KnownValue> known(Section section, Dimension dimension, AllowedRange range) {
        if (!section.has("points")) {
            if (section.has("column")) {
                section.refuse(
                        "column", Finding.of(ProblemKind.CONFLICTING_KEYS, "a column", "a column only with points"));
            }
            return List.of();
        }
        @Nullable SpatialFile file = inputs.spatialFile(section, "points");
        @Nullable String column = section.text("column");
        if (file == null || column == null) {
            return null;
        }
        List<Field.PointValue> points = new PointFieldReader(inputs, area).points(file, column, dimension, range);
        for (Field.PointValue point : points) {
            if (!(point.value() > 0)) {
                section.refuse(
                        "points",
                        Finding.of(
                                ProblemKind.OUT_OF_RANGE,
                                "a value of " + PlainNumber.of(point.value()),
                                "positive values"));
                return null;
            }
        }
        return points.stream()
                .map(point ->
                        new KnownValue(point.position().x(), point.position().y(), point.value()))
                .toList();
    }

    /** A whole number, 1 if the key is absent; null after a problem has been reported. */
    private static @Nullable Long whole(Section section, String key, AllowedRange range) {
        if (!section.has(key)) {
            return 1L;
        }
        @Nullable Quantity quantity = section.quantity(key, Dimension.NUMBER, range);
        if (quantity != null && quantity.value() != Math.rint(quantity.value())) {
            section.refuse(key, Finding.of(ProblemKind.OUT_OF_RANGE, quantity.text(), "a whole number"));
            return null;
        }
        return quantity == null ? null : (long) quantity.value();
    }
}

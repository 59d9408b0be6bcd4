package org.headfall.scenarios.sweep.document;

import java.util.List;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.sweep.sampling.Distribution;

/** Which values a variable takes. */
public sealed interface Variation {

    /**
     * The value for a coordinate.
     *
     * @param coordinate more than 0 and less than 1
     * @return the value as it stands in the document of a run
     */
    Input at(double coordinate);

    /** Whether values are samples of what is unknown, rather than choices. */
    boolean isDrawn();

    /**
     * Some values, one as likely as another.
     *
     * @param inputs the values in the order given, at least one
     * @param isDrawn whether they are samples themselves
     */
    record Listed(List<Input> inputs, boolean isDrawn) implements Variation {
        /** Copies the list. */
        public Listed {
            inputs = List.copyOf(inputs);
        }

        @Override
        public Input at(double coordinate) {
            return inputs.get(Math.min(inputs.size() - 1, (int) (coordinate * inputs.size())));
        }
    }

    /**
     * Any value of a distribution, rounded to seven digits.
     *
     * @param distribution how likely values are
     * @param unit their unit as typed
     * @param place where the distribution stands
     */
    record Drawn(Distribution distribution, String unit, Place place) implements Variation {
        @Override
        public boolean isDrawn() {
            return true;
        }

        @Override
        public Input at(double coordinate) {
            return Input.of(Measure.rounded(distribution.quantile(coordinate), unit), place);
        }
    }

    /**
     * Random fields, one as likely as another, told apart by their numbers. There are many more numbers than samples, so
     * that samples spread evenly over the axis never share one.
     *
     * @param fields draws them
     */
    record DrawnFields(NumberedFields fields) implements Variation {
        private static final int MOST = 1_000_000;

        @Override
        public boolean isDrawn() {
            return true;
        }

        @Override
        public Input at(double coordinate) {
            return fields.input(Math.min(MOST, 1 + (int) (coordinate * MOST)));
        }
    }
}

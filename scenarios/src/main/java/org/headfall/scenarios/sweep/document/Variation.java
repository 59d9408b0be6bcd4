package org.headfall.scenarios.sweep.document;

import java.util.List;
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

    /**
     * Some values, one as likely as another.
     *
     * @param inputs the values in the order given, at least one
     */
    record Listed(List<Input> inputs) implements Variation {
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
     */
    record Drawn(Distribution distribution, String unit) implements Variation {
        @Override
        public Input at(double coordinate) {
            return Input.of(Measure.rounded(distribution.quantile(coordinate), unit));
        }
    }
}

package org.headfall.scenarios.sweep.figures;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;

/**
 * A figure of the one of several bores that is worst off, whichever that is in a run: the least head, the largest loss.
 *
 * @param name unique name
 * @param quantity what it says
 * @param bores which bores
 * @param day day of the report date (d since the start); not used where the quantity is of the whole run
 */
public record WorstFigure(String name, PlaceFigure.Quantity quantity, Bores bores, double day) implements KeptFigure {

    /** Several bores, by the words of a scenario. */
    public enum Bores {
        /** Those that are there. */
        EXISTING("existing bores"),
        /** Those that are planned. */
        PROPOSED("proposed bores"),
        /** Both. */
        ALL("all bores");

        private final String words;

        Bores(String words) {
            this.words = words;
        }

        /** Its name in a sweep document. */
        public String words() {
            return words;
        }

        private boolean has(Station station) {
            return station instanceof Station.BoreSite bore && (this == ALL || bore.proposed() == (this == PROPOSED));
        }
    }

    /** The name of such a figure without a date, such as "least head of proposed bores". */
    public static String usualName(PlaceFigure.Quantity quantity, Bores bores) {
        return (quantity.largestIsWorst() ? "largest " : "least ") + quantity.words() + " of " + bores.words();
    }

    private PlaceFigure at(String place) {
        return new PlaceFigure(name, quantity, place, day);
    }

    @Override
    public String unit() {
        return at("").unit();
    }

    @Override
    public boolean needsInterference() {
        return at("").needsInterference();
    }

    @Override
    public boolean needsBalance() {
        return false;
    }

    @Override
    public double valueIn(FinishedRun run) {
        double[] values = run.description().stations().stream()
                .filter(bores::has)
                .mapToDouble(station -> at(station.name()).valueIn(run))
                .filter(value -> !Double.isNaN(value))
                .toArray();
        DoubleStream all = Arrays.stream(values);
        OptionalDouble worst = quantity.largestIsWorst() ? all.max() : all.min();
        return worst.orElse(Double.NaN);
    }
}

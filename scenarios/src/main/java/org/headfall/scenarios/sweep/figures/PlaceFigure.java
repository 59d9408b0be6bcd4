package org.headfall.scenarios.sweep.figures;

import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.FinishedRun;

/**
 * A figure of one place, most of them at a report date.
 *
 * @param name unique name
 * @param quantity what it says
 * @param place name of the bore, spring or point
 * @param day day of the report date (d since the start); not used where the quantity is of the whole run
 */
public record PlaceFigure(String name, Quantity quantity, String place, double day) implements KeptFigure {

    private static final double SAME_DAY = 1e-6;

    /** What is said of a place; names and values are those of {@code artesian-head.csv} and {@code interference.csv}. */
    public enum Quantity {
        /** Head. */
        HEAD("head", "m above datum", true, false),
        /** Head above the ground. */
        HEAD_ABOVE_GROUND("head above ground", "m", true, false),
        /** Head at the start less head at the date. */
        LOSS("loss", "m", true, true),
        /** Fall of head over the last five years. */
        DECLINE("decline", "m/yr", true, true),
        /** Level in the bore. */
        LEVEL_IN_BORE("level in bore", "m above datum", true, false),
        /** Level in the bore less that of the pump intake. */
        WATER_ABOVE_PUMP("water above pump", "m", true, false),
        /** Discharge of a bore or spring. */
        DISCHARGE("discharge", "m3/d", true, false),
        /** Drawdown due to the neighbours. */
        NEIGHBOURS("drawdown by neighbours", "m", true, true),
        /** Extra lift because of the neighbours. */
        EXTRA_LIFT("extra lift", "m", true, true),
        /** Yield lost to the neighbours. */
        YIELD_LOST("yield lost", "m3/d", true, true),
        /** Time after the start at which it stops flowing by itself. */
        STOPS_FLOWING("stops flowing", "yr after the start", false, false);

        private final String words;
        private final String unit;
        private final boolean dated;
        private final boolean largestIsWorst;

        Quantity(String words, String unit, boolean dated, boolean largestIsWorst) {
            this.words = words;
            this.unit = unit;
            this.dated = dated;
            this.largestIsWorst = largestIsWorst;
        }

        /** Whether of several places the one with the largest value is the worst off; otherwise the one with the least. */
        boolean largestIsWorst() {
            return largestIsWorst;
        }

        /** Its name in a sweep document. */
        public String words() {
            return words;
        }

        /** Whether it belongs to a date. */
        public boolean isDated() {
            return dated;
        }
    }

    @Override
    public String unit() {
        return quantity.unit;
    }

    @Override
    public boolean needsInterference() {
        return quantity == Quantity.NEIGHBOURS || quantity == Quantity.EXTRA_LIFT || quantity == Quantity.YIELD_LOST;
    }

    @Override
    public double valueIn(FinishedRun run) {
        if (run.description().stationIndex(place) < 0) {
            // A layout with fewer bores than that of the base scenario.
            return Double.NaN;
        }
        if (needsInterference()) {
            return shareOfInterference(run);
        }
        ArtesianHead found = run.findings().artesianHead().stream()
                .filter(head -> head.station().equals(place))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the run has no place " + place));
        if (quantity == Quantity.STOPS_FLOWING) {
            return found.flowByItself() instanceof FlowByItself.Stops stops
                    ? stops.day() / RunCalendar.DAYS_PER_YEAR
                    : Double.NaN;
        }
        ArtesianHead.AtDate at = found.atDates().stream()
                .filter(date -> isOn(date.day()))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the run reports nothing on day " + day));
        return switch (quantity) {
            case HEAD -> found.groundLevel() + at.headAboveGround();
            case HEAD_ABOVE_GROUND -> at.headAboveGround();
            case LOSS -> at.loss();
            case DECLINE -> orNone(at.declineRate());
            case LEVEL_IN_BORE -> orNone(at.levelInBore());
            case WATER_ABOVE_PUMP -> orNone(at.waterAbovePump());
            default -> orNone(at.flow());
        };
    }

    private double shareOfInterference(FinishedRun run) {
        List<InterferenceTable.BoreShare> shares = run.findings().interference().stream()
                .filter(table -> isOn(table.day()))
                .flatMap(table -> table.bores().stream())
                .filter(share -> share.bore().equals(place))
                .toList();
        if (shares.isEmpty()) {
            throw new IllegalStateException("the run says nothing of the neighbours of " + place + " on day " + day);
        }
        InterferenceTable.BoreShare share = shares.get(0);
        return switch (quantity) {
            case NEIGHBOURS -> share.neighbours();
            case EXTRA_LIFT -> orNone(share.extraLift());
            default -> orNone(share.lossOfYield());
        };
    }

    private boolean isOn(double other) {
        return Math.abs(other - day) < SAME_DAY;
    }

    private static double orNone(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }
}

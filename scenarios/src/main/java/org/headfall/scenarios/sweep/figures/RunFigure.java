package org.headfall.scenarios.sweep.figures;

import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.flow.WaterBalance;

/**
 * A figure of a run as a whole.
 *
 * @param name unique name
 * @param quantity what it says
 * @param day day of the report date (d since the start); not used where the quantity is of the whole run
 */
public record RunFigure(String name, Quantity quantity, double day) implements KeptFigure {

    private static final double PER_CENT = 100;

    /** What is said of a run. */
    public enum Quantity {
        /** Discharge of all bores together. */
        ALL_BORES("discharge of all bores", "m3/d", true),
        /** Discharge of all proposed bores together. */
        PROPOSED_BORES("discharge of proposed bores", "m3/d", true),
        /** Volume that all bores took in the whole period. */
        VOLUME("volume taken", "ML", false),
        /** Largest discrepancy of the water balance of a recorded period over its throughput. */
        BALANCE_ERROR("balance error", "%", false);

        private final String words;
        private final String unit;
        private final boolean dated;

        Quantity(String words, String unit, boolean dated) {
            this.words = words;
            this.unit = unit;
            this.dated = dated;
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
    public boolean needsBalance() {
        return !quantity.dated;
    }

    @Override
    public double valueIn(FinishedRun run) {
        return switch (quantity) {
            case ALL_BORES -> discharge(run, false);
            case PROPOSED_BORES -> discharge(run, true);
            case VOLUME ->
                VolumeUnit.MEGALITRES.of(run.recording().balances().stream()
                        .flatMap(balance -> balance.terms().stream())
                        .filter(term -> term.kind() == WaterBalance.Kind.BORE)
                        .mapToDouble(term -> term.outflow() - term.inflow())
                        .sum());
            case BALANCE_ERROR ->
                run.recording().balances().stream()
                                .mapToDouble(WaterBalance::relativeDiscrepancy)
                                .max()
                                .orElse(Double.NaN)
                        * PER_CENT;
        };
    }

    private double discharge(FinishedRun run, boolean onlyProposed) {
        double sum = 0;
        for (int i = 0; i < run.recording().series().size(); i++) {
            StationSeries series = run.recording().series().get(i);
            if (run.description().stations().get(i) instanceof Station.BoreSite bore
                    && (bore.proposed() || !onlyProposed)) {
                sum += series.dischargeAt(day);
            }
        }
        return sum;
    }
}

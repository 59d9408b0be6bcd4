package org.headfall.scenarios.siting;

import org.headfall.scenarios.quantity.LiftEnergy;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.NeededLevel;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;

/** Levels in a new bore: how low they may fall, how low they do, what lifting takes. */
final class PumpingLevels {

    private final RunDescription run;
    private final SitingSpecification siting;
    private final WellLoss loss;

    PumpingLevels(RunDescription run, SitingSpecification siting) {
        this.run = run;
        this.siting = siting;
        loss = new WellLoss(
                siting.wellLoss().linear(),
                siting.wellLoss().turbulent(),
                siting.wellLoss().exponent());
    }

    /** Lowest level allowed in a bore (m above datum). */
    double floor(int cell) {
        return Math.max(byTop(cell), Math.max(byDepth(cell), byLift(cell)));
    }

    /** What sets the lowest level. */
    int reason(int cell) {
        double floor = floor(cell);
        if (floor == byTop(cell)) {
            return Ruling.AQUIFER_TOP;
        }
        return floor == byDepth(cell) ? Ruling.PUMPING_LEVEL : Ruling.LIFT;
    }

    private double byTop(int cell) {
        return run.aquifer().top()[cell] + siting.lifting().aboveTop();
    }

    private double byDepth(int cell) {
        return run.ground()[cell] - siting.lifting().deepestLevel().orElse(Double.POSITIVE_INFINITY);
    }

    private double byLift(int cell) {
        return delivery(cell) - siting.lifting().largestLift().orElse(Double.POSITIVE_INFINITY);
    }

    private double delivery(int cell) {
        return run.ground()[cell] + siting.lifting().deliveryHead();
    }

    /**
     * Largest rate that keeps the lowest level.
     *
     * @param cell the cell
     * @param head head there without the bore (m above datum)
     * @param own own drawdown at the wall per discharge (d/m²)
     */
    double largestRate(int cell, double head, double own) {
        return new NeededHead(NeededLevel.constant(floor(cell)), loss, WaterColumn.REFERENCE)
                .discharge(head, own, siting.largestRate());
    }

    /** Level in a bore (m above datum). */
    double level(double head, double own, double rate) {
        return head - own * rate - loss.at(rate);
    }

    /** Lift from a level to where the water is delivered (m); none where it rises there by itself. */
    double lift(int cell, double level) {
        return Math.max(0, delivery(cell) - level);
    }

    /** Energy of a lift (kWh/ML). */
    double energy(double lift) {
        return LiftEnergy.perMegalitre(lift, siting.lifting().efficiency());
    }
}

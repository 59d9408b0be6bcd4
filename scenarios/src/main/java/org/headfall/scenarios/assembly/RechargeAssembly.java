package org.headfall.scenarios.assembly;

import java.util.List;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.scenario.RechargeSpecification;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.schedule.Schedule;

/** Puts recharge on cells; a cell that lies partly in the area of the recharge gets that part of it. */
final class RechargeAssembly {
    private final AreaOnCells areas;
    private final boolean[] active;
    private final FieldOnCells fields;
    private final ScheduleAssembly schedules;

    RechargeAssembly(AreaOnCells areas, boolean[] active, FieldOnCells fields, ScheduleAssembly schedules) {
        this.areas = areas;
        this.active = active;
        this.fields = fields;
        this.schedules = schedules;
    }

    List<Recharge> recharges(List<RechargeSpecification> specifications) {
        return specifications.stream().map(this::recharge).toList();
    }

    private Recharge recharge(RechargeSpecification recharge) {
        double[] shares = areas.shares(recharge.within(), active);
        if (recharge.rate() instanceof RechargeSpecification.SteadyRate steady) {
            double[] rate = fields.values(steady.rate(), Averaging.ARITHMETIC, 0);
            for (int cell = 0; cell < rate.length; cell++) {
                rate[cell] *= shares[cell];
            }
            return new Recharge(recharge.name(), rate, Schedule.constant(1));
        }
        RechargeSpecification.ChangingRate changing = (RechargeSpecification.ChangingRate) recharge.rate();
        return new Recharge(recharge.name(), shares, schedules.schedule(changing.rate()));
    }
}

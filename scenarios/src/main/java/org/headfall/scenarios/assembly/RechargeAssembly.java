package org.headfall.scenarios.assembly;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.scenario.RechargeSpecification;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;

/** Puts recharge on cells. */
final class RechargeAssembly {
    private final RectilinearGrid grid;
    private final FieldOnCells fields;
    private final ScheduleAssembly schedules;

    RechargeAssembly(RectilinearGrid grid, FieldOnCells fields, ScheduleAssembly schedules) {
        this.grid = grid;
        this.fields = fields;
        this.schedules = schedules;
    }

    List<Recharge> recharges(List<RechargeSpecification> specifications) {
        return specifications.stream().map(this::recharge).toList();
    }

    private Recharge recharge(RechargeSpecification recharge) {
        if (recharge.rate() instanceof RechargeSpecification.SteadyRate steady) {
            double[] rate = fields.values(steady.rate(), Averaging.ARITHMETIC, 0);
            return new Recharge(recharge.name(), rate, Schedule.constant(1));
        }
        RechargeSpecification.ChangingRate changing = (RechargeSpecification.ChangingRate) recharge.rate();
        double[] everywhere = new double[grid.cellCount()];
        Arrays.fill(everywhere, 1);
        return new Recharge(recharge.name(), everywhere, schedules.schedule(changing.rate()));
    }
}

package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.Period;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;

/** Turns bores with dates into bores with days of the period. */
final class BoreAssembly {
    private final Period period;
    private final ScheduleAssembly schedules;

    BoreAssembly(Period period, ScheduleAssembly schedules) {
        this.period = period;
        this.schedules = schedules;
    }

    List<Bore> bores(List<BoreSpecification> specifications) {
        return specifications.stream().map(this::bore).toList();
    }

    private Bore bore(BoreSpecification bore) {
        WellLoss wellLoss =
                new WellLoss(bore.wellLoss().linear(), bore.wellLoss().quadratic());
        List<OperatingPhase> phases = new ArrayList<>();
        for (Phase phase : bore.phases()) {
            // a phase without a date has always been so; proposed bores have no part in a steady start
            double from = phase.from().map(period::day).orElse(Double.NEGATIVE_INFINITY);
            phases.add(new OperatingPhase(from, operation(bore, phase.operation())));
        }
        return new Bore(bore.name(), bore.position().x(), bore.position().y(), bore.screenRadius(), wellLoss, phases);
    }

    private Operation operation(BoreSpecification bore, BoreOperation operation) {
        if (operation instanceof BoreOperation.Pumped pumped) {
            return new Operation.PumpedRate(
                    schedules.schedule(pumped.rate()), bore.levels().pumpingFloor());
        }
        return operation instanceof BoreOperation.FreeFlow
                ? new Operation.FreeFlow(bore.levels().outlet().orElseThrow())
                : new Operation.Off();
    }
}

package org.headfall.scenarios.doubts;

import java.util.List;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.schedule.Schedule;

/** The same problem with everything kept as it is at one moment, so that heads at rest then never change. */
public final class UnchangedProblem {

    private final double day;

    private UnchangedProblem(double day) {
        this.day = day;
    }

    /**
     * The problem in which nothing changes.
     *
     * @param problem the problem
     * @param day the moment (d since the start)
     * @return the problem with the boundaries, the recharge and the operation of bores of that moment for all time
     */
    public static FlowProblem of(FlowProblem problem, double day) {
        UnchangedProblem unchanged = new UnchangedProblem(day);
        return new FlowProblem(
                problem.aquifer(),
                problem.sealingBed(),
                problem.boundaries().stream().map(unchanged::boundary).toList(),
                problem.recharges().stream().map(unchanged::recharge).toList(),
                problem.springs(),
                problem.bores().stream().map(unchanged::bore).toList());
    }

    private Schedule constant(Schedule schedule) {
        return Schedule.constant(schedule.at(day));
    }

    private OuterBoundary boundary(OuterBoundary boundary) {
        if (boundary instanceof OuterBoundary.FixedHead fixed) {
            return new OuterBoundary.FixedHead(fixed.name(), fixed.segment(), constant(fixed.head()));
        }
        if (boundary instanceof OuterBoundary.FarHead far) {
            return new OuterBoundary.FarHead(far.name(), far.segment(), constant(far.head()), far.distance());
        }
        OuterBoundary.GivenFlow given = (OuterBoundary.GivenFlow) boundary;
        return new OuterBoundary.GivenFlow(given.name(), given.segment(), constant(given.inflow()));
    }

    private Recharge recharge(Recharge recharge) {
        return new Recharge(recharge.name(), recharge.rate(), constant(recharge.factor()));
    }

    private Bore bore(Bore bore) {
        Operation operation = bore.operationAt(day);
        if (operation instanceof Operation.PumpedRate pumped) {
            operation = new Operation.PumpedRate(constant(pumped.rate()), pumped.lowestLevel());
        }
        return bore.withPhases(List.of(new OperatingPhase(day, operation)));
    }
}

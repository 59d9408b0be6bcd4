package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;

/**
 * What bores can bring up: a rate needs a head at the wall of its bore, by the curve of its pump or, where a bore flows by itself, by
 * its outlet. No bore takes anything in a block on a day of which head does not suffice even if all that share rest.
 */
final class Lifts {

    private final List<Requirement> requirements = new ArrayList<>();
    private final double[] most;

    /**
     * Lifts of bores.
     *
     * @param plan the plan of the document
     * @param variables the rates of the bores that share
     * @param days days on which bores may take (d)
     * @param without the run without these bores
     */
    Lifts(RunPlan plan, RateVariables variables, double[] days, RunInMemory without) {
        most = new double[variables.count()];
        Arrays.fill(most, Double.POSITIVE_INFINITY);
        for (int b = 0; b < variables.bores(); b++) {
            int station = variables.station(b);
            Bore bore = plan.problem().bores().get(station);
            StationSeries resting = without.recording().series().get(station);
            Map<Operation, List<Double>> daysOf = new LinkedHashMap<>();
            for (double day : days) {
                inForce(bore, day)
                        .ifPresent(lift -> daysOf.computeIfAbsent(lift, key -> new ArrayList<>())
                                .add(day));
            }
            for (Map.Entry<Operation, List<Double>> one : daysOf.entrySet()) {
                Requirement.OfLift lift = lift(plan.problem(), bore, b, one.getKey());
                one.getValue().forEach(day -> bound(variable(variables, lift, day), lift, resting.headAt(day)));
                double[] counted = one.getValue().stream()
                        .mapToDouble(Double::doubleValue)
                        .filter(day -> most[variable(variables, lift, day)] > 0)
                        .toArray();
                requirements.add(new Requirement(lift, station, variables.everyone(), counted));
            }
        }
    }

    private static int variable(RateVariables variables, Requirement.OfLift lift, double day) {
        return variables.variable(
                lift.bore(), Objects.requireNonNull(variables.blocks().at(day)).group());
    }

    private void bound(int variable, Requirement.OfLift lift, double restingHead) {
        double largest = restingHead > lift.headFor(0) ? lift.largest() : 0;
        most[variable] = Math.min(most[variable], largest);
    }

    private static Requirement.OfLift lift(FlowProblem problem, Bore bore, int number, Operation operation) {
        NeededHead needed = new NeededHead(operation.neededLevel().orElseThrow(), problem.lossIn(bore), bore.column());
        double largest = operation instanceof Operation.PumpedByCurve pump
                ? pump.curve().largestFlow()
                : Double.POSITIVE_INFINITY;
        return new Requirement.OfLift(bore.name(), number, needed, largest);
    }

    /** What brings the water of a bore up just before a moment; when it is off, what does so before or else after. */
    private static Optional<Operation> inForce(Bore bore, double day) {
        Optional<Operation> found = Optional.empty();
        for (OperatingPhase phase : bore.phases()) {
            boolean later = phase.fromDay() >= day;
            if (later && found.isPresent()) {
                break;
            }
            if (!(phase.operation() instanceof Operation.Off)) {
                found = Optional.of(phase.operation());
            }
        }
        return found.filter(one -> one instanceof Operation.PumpedByCurve || one instanceof Operation.FreeFlow);
    }

    /** That each bore brings up its rate. */
    List<Requirement> requirements() {
        return requirements;
    }

    /** Most that each bore can ever bring up in each group of blocks, bore by bore (m³/d); infinite where nothing bounds it. */
    double[] most() {
        return most.clone();
    }
}

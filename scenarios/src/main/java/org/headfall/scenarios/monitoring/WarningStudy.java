package org.headfall.scenarios.monitoring;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;

/**
 * Finds for each limit that is crossed the last day on which stopping the bores that it counts still prevents that. Drawdown
 * goes on growing at distant places after taking has stopped, so that day lies before the crossing. It is searched by
 * halving, since stopping earlier never makes a limit of head worse.
 */
public final class WarningStudy {

    /** How closely the last day is found (d). */
    private static final double CLOSENESS = 10;

    private final RunPlan plan;
    private final RunFromResponses answers;
    private final SuperposedRun asItIs;

    /**
     * A study.
     *
     * @param plan the run
     * @param answers the run answered from unit responses
     * @throws IllegalStateException if it cannot be answered so
     */
    public WarningStudy(RunPlan plan, RunFromResponses answers) {
        this.plan = plan;
        this.answers = answers;
        asItIs = answers.answer()
                .orElseThrow(() -> new IllegalStateException(answers.inexact().orElse("")));
    }

    /** One warning for each limit that can be monitored at its place, in their order. */
    public List<Warning> warnings() {
        return plan.limits().stream()
                .filter(limit -> obstacle(limit).isEmpty())
                .map(this::warning)
                .toList();
    }

    /** The other limits, with the reason why there is no warning of them. */
    public List<UncountedLimit> leftOut() {
        return plan.limits().stream()
                .flatMap(limit ->
                        obstacle(limit).stream().map(reason -> new UncountedLimit(limit.nameAndPlace(), reason, "")))
                .toList();
    }

    /** Why nothing that is measured as time goes on says when to act for a limit; words that go on after its name. */
    private static Optional<String> obstacle(Limit limit) {
        if (limit.quantity() instanceof LimitedQuantity.Distance) {
            return Optional.of("is about where bores stand, which no reading changes");
        }
        if (limit.place() instanceof LimitPlace.OnMap) {
            return Optional.of(
                    "holds for a part of the map, where nothing is measured: give it protected points as well");
        }
        if (limit.quantity() instanceof LimitedQuantity.Volume) {
            return Optional.of("is about volumes, which meters show: see accounts.csv of a run");
        }
        if (limit.period().afterTakingStops()) {
            return Optional.of(
                    "counts on after taking stops, beyond the run: see limits.csv and recovery.csv of a run");
        }
        return limit.needsOtherRun() && limit.comparison() instanceof Comparison.WithCase
                ? Optional.of("is compared with another case: see limits.csv of a run of the cases")
                : Optional.empty();
    }

    private Warning warning(Limit limit) {
        BitSet stopped = LeftOut.bores(plan.description(), limit.comparison());
        Outcome outcome = answers.judged(limit, plan.problem(), asItIs);
        OptionalDouble crossed = firstDay(outcome);
        if (crossed.isEmpty()) {
            String says = outcome instanceof Outcome.NotEvaluated not
                    ? "It was not judged: " + not.reason()
                    : "The limit is not crossed in the run.";
            return warning(limit, stopped, crossed, Optional.empty(), says);
        }
        if (stopped.isEmpty() || !holdsIfStopped(limit, stopped, 0)) {
            String says = "Stopping these bores on the first day does not prevent the crossing.";
            return warning(limit, stopped, crossed, Optional.empty(), says);
        }
        double last = lastDay(limit, stopped, crossed.getAsDouble());
        Warning.LastChance chance = new Warning.LastChance(last, crossed.getAsDouble() - last, levels(last, stopped));
        return warning(
                limit,
                stopped,
                crossed,
                Optional.of(chance),
                "Stopping these bores by that day prevents the crossing.");
    }

    private Warning warning(
            Limit limit, BitSet stopped, OptionalDouble crossed, Optional<Warning.LastChance> chance, String says) {
        List<String> names = stopped.stream()
                .mapToObj(bore -> plan.description().bores().get(bore).name())
                .toList();
        return new Warning(limit.name(), limit.station(), String.join("; ", names), crossed, chance, says);
    }

    private static OptionalDouble firstDay(Outcome outcome) {
        if (outcome instanceof Outcome.Crossed crossed) {
            return OptionalDouble.of(crossed.firstDay());
        }
        return outcome instanceof Outcome.Undecided undecided ? undecided.firstDay() : OptionalDouble.empty();
    }

    private double lastDay(Limit limit, BitSet stopped, double crossedDay) {
        double prevents = 0;
        double tooLate = crossedDay;
        while (tooLate - prevents > CLOSENESS) {
            double middle = (prevents + tooLate) / 2;
            if (holdsIfStopped(limit, stopped, middle)) {
                prevents = middle;
            } else {
                tooLate = middle;
            }
        }
        return prevents;
    }

    private boolean holdsIfStopped(Limit limit, BitSet stopped, double day) {
        FlowProblem problem = plan.problem().withBores(stoppedFrom(day, stopped));
        return firstDay(answers.judged(limit, problem, answers.superposed(problem)))
                .isEmpty();
    }

    private List<Bore> stoppedFrom(double day, BitSet stopped) {
        List<Bore> bores = new ArrayList<>(plan.problem().bores());
        for (int bore = stopped.nextSetBit(0); bore >= 0; bore = stopped.nextSetBit(bore + 1)) {
            List<OperatingPhase> phases = new ArrayList<>(bores.get(bore).phases());
            phases.removeIf(phase -> phase.fromDay() >= day);
            phases.add(new OperatingPhase(day, new Operation.Off()));
            bores.set(bore, bores.get(bore).withPhases(phases));
        }
        return bores;
    }

    private List<Warning.WarningLevel> levels(double day, BitSet stopped) {
        double[] days =
                asItIs.states().stream().mapToDouble(SuperposedState::day).toArray();
        double yearBefore = Math.max(0, day - RunCalendar.DAYS_PER_YEAR);
        return IntStream.range(0, plan.description().stations().size())
                .filter(station -> !stopped.get(station))
                .mapToObj(station -> level(station, days, yearBefore, day))
                .toList();
    }

    private Warning.WarningLevel level(int station, double[] days, double from, double day) {
        double[] heads = asItIs.states().stream()
                .mapToDouble(state -> state.head()[station])
                .toArray();
        double now = StationSeries.interpolate(days, heads, day);
        double lowest = Math.min(now, StationSeries.interpolate(days, heads, from));
        double highest = Math.max(now, StationSeries.interpolate(days, heads, from));
        for (int k = 0; k < days.length; k++) {
            if (days[k] > from && days[k] < day) {
                lowest = Math.min(lowest, heads[k]);
                highest = Math.max(highest, heads[k]);
            }
        }
        return new Warning.WarningLevel(
                plan.description().stations().get(station).name(), now, lowest, highest);
    }
}

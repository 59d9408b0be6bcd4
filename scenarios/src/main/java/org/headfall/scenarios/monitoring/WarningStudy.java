package org.headfall.scenarios.monitoring;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.StatedErrors;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;

/**
 * Finds for each limit that is crossed, or may be within its error, the last day on which stopping the bores that it counts still prevents that. Drawdown
 * goes on growing at distant places after taking has stopped, so that day lies before the crossing. It is searched by
 * halving, since stopping earlier never makes a limit of head worse.
 */
public final class WarningStudy {

    /** How closely the last day is found (d). */
    private static final double CLOSENESS = 10;

    private final RunPlan plan;
    private final RunFromResponses answers;
    private final SuperposedRun asItIs;
    private final StatedErrors stated;

    /**
     * A study.
     *
     * @param plan the run
     * @param answers the run answered from unit responses
     * @param stated errors that the run states from which the responses are; they are taken to be those of its limits here
     * @throws IllegalStateException if it cannot be answered so
     */
    public WarningStudy(RunPlan plan, RunFromResponses answers, StatedErrors stated) {
        this.plan = plan;
        this.answers = answers;
        this.stated = stated;
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
        Optional<Outcome.Worst> worst = outcome.worstIfAny();
        if (worst.isEmpty()) {
            String says = outcome instanceof Outcome.NotEvaluated not
                    ? "It was not judged: " + not.reason()
                    : "The limit is not crossed in the run.";
            return warning(limit, stopped, Warning.Crossing.NONE, Optional.empty(), says);
        }
        double error = error(limit, worst.get());
        Warning.Crossing crossing = crossing(limit, outcome, worst.get(), error);
        if (crossing.earliest().isEmpty()) {
            return warning(limit, stopped, crossing, Optional.empty(), "The limit is not crossed in the run.");
        }
        double due = crossing.earliest().getAsDouble();
        if (!stopped.isEmpty() && staysAbove(error, limit, stopped, 0)) {
            String says = "Stopping these bores by that day prevents the crossing.";
            return warning(limit, stopped, crossing, chance(error, limit, stopped, due), says);
        }
        if (!stopped.isEmpty() && crossing.computed().isPresent() && staysAbove(0, limit, stopped, 0)) {
            String says =
                    "Stopping these bores by that day prevents the crossing as computed, but not for sure: even if they"
                            + " stop on the first day the margin is smaller than the error.";
            double computed = crossing.computed().getAsDouble();
            return warning(limit, stopped, crossing, chance(0, limit, stopped, computed), says);
        }
        String says = crossing.computed().isPresent()
                ? "Stopping these bores on the first day does not prevent the crossing."
                : "Stopping these bores on the first day does not make sure of it.";
        return warning(limit, stopped, crossing, Optional.empty(), says);
    }

    private Warning warning(
            Limit limit, BitSet stopped, Warning.Crossing crossing, Optional<Warning.LastChance> chance, String says) {
        List<String> names = stopped.stream()
                .mapToObj(bore -> plan.description().bores().get(bore).name())
                .toList();
        return new Warning(limit.name(), limit.station(), String.join("; ", names), crossing, chance, says);
    }

    /** The run knows more of its errors than an answer from its responses, which errs by less than its own bound besides. */
    private double error(Limit limit, Outcome.Worst worst) {
        return Math.max(worst.error(), ofRun(limit).map(Outcome.Worst::error).orElse(0.0));
    }

    private Optional<Outcome.Worst> ofRun(Limit limit) {
        return stated.of(limit).flatMap(result -> result.outcome().worstIfAny());
    }

    private Warning.Crossing crossing(Limit limit, Outcome outcome, Outcome.Worst worst, double error) {
        LimitMargins margins = answers.margins(limit, plan.problem(), asItIs);
        boolean sameRates = ofRun(limit)
                .map(run -> Math.abs(run.value() - worst.value()) <= worst.error())
                .orElse(false);
        OptionalDouble computed =
                sameRates ? firstDay(stated.of(limit).orElseThrow().outcome()) : firstDay(outcome);
        OptionalDouble earliest = firstBelow(margins, error);
        // The straight line between records may put the run's own day before the earliest of the answer.
        if (computed.isPresent()) {
            earliest = OptionalDouble.of(Math.min(earliest.orElse(computed.getAsDouble()), computed.getAsDouble()));
        }
        return new Warning.Crossing(computed, earliest, firstBelow(margins, -error), error);
    }

    private static OptionalDouble firstBelow(LimitMargins margins, double level) {
        return Crossing.below(margins.days(), margins.margins(), level, 0);
    }

    private static OptionalDouble firstDay(Outcome outcome) {
        if (outcome instanceof Outcome.Crossed crossed) {
            return OptionalDouble.of(crossed.firstDay());
        }
        return outcome instanceof Outcome.Undecided undecided ? undecided.firstDay() : OptionalDouble.empty();
    }

    private Optional<Warning.LastChance> chance(double least, Limit limit, BitSet stopped, double crossedDay) {
        double last = lastDay(least, limit, stopped, crossedDay);
        return Optional.of(new Warning.LastChance(last, crossedDay - last, levels(last, stopped)));
    }

    private double lastDay(double least, Limit limit, BitSet stopped, double crossedDay) {
        double prevents = 0;
        double tooLate = crossedDay;
        while (tooLate - prevents > CLOSENESS) {
            double middle = (prevents + tooLate) / 2;
            if (staysAbove(least, limit, stopped, middle)) {
                prevents = middle;
            } else {
                tooLate = middle;
            }
        }
        return prevents;
    }

    /** Whether the margin stays above a least one (in the unit of the limit) if bores are stopped on a day. */
    private boolean staysAbove(double least, Limit limit, BitSet stopped, double day) {
        FlowProblem problem = plan.problem().withBores(stoppedFrom(day, stopped));
        return firstBelow(answers.margins(limit, problem, answers.superposed(problem)), least)
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

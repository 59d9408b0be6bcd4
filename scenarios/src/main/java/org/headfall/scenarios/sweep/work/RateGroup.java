package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.LinearRuns;
import org.headfall.scenarios.run.MatchedResponses;
import org.headfall.scenarios.run.PlanPattern;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.sweep.document.BaseScenario;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;

/**
 * Runs that differ in rates of bores alone: what they share is assembled and computed once. Nothing of it depends on which
 * run came first, so that a run gets the same figures in any order and any part.
 */
final class RateGroup {

    /** Where from its least to its largest value a rate stands in the first of the runs that the others are held against. */
    private static final double MIDDLE = 0.5;

    /** Where it may stand in the run that changes it. */
    private static final List<Double> ELSEWHERE = List.of(0.75, 0.25, 0.99, 0.01);

    private static final String SOURCE = "this sweep";
    private static final String SUPERPOSED = "unit responses";
    private static final String LINEAR = "unit responses, linear in the rates";

    private final BaseScenario base;
    private final List<Variable> rates;
    private final boolean interference;
    private final Map<Variable, Input> middle;
    private final PlanPattern pattern;
    private final MatchedResponses responses;
    private final Optional<LinearRuns> linear;

    /** How far each rate is moved from the middle in the run that changes it; none of a rate that has one value only. */
    private final Map<Variable, Double> moved = new LinkedHashMap<>();

    /**
     * The group of a run.
     *
     * @param sweep the sweep
     * @param rates the variables that are rates of bores
     * @param run what a run of the group gets
     * @param program program and version
     * @throws InputException if it makes no valid scenario
     * @throws IOException if a file cannot be read any more
     */
    RateGroup(SweepDocument sweep, List<Variable> rates, Map<Variable, Input> run, String program)
            throws InputException, IOException {
        base = sweep.base();
        this.rates = rates;
        interference = sweep.needsInterference();
        middle = new LinkedHashMap<>(run);
        rates.forEach(rate -> middle.put(rate, rate.variation().at(MIDDLE)));
        ScenarioReading reading = base.read(base.with(middle));
        boolean isValid = reading.problems().isEmpty();
        pattern = PlanPattern.of(isValid ? reading : base.read(base.with(run)), program);
        responses = MatchedResponses.of(pattern.plan(), RunFromResponses.responsesOf(pattern.plan()));
        linear = isValid && !interference ? linear() : Optional.empty();
    }

    /** All runs of the group from a few, if they are linear in the rates and those few are valid and exact enough. */
    private Optional<LinearRuns> linear() {
        if (!LinearRuns.hold(pattern.plan()) || !rates.stream().allMatch(Variable::numeric)) {
            return Optional.empty();
        }
        try {
            List<RunFromResponses> others = new ArrayList<>();
            for (Variable rate : rates) {
                Optional<Input> other = elsewhere(rate);
                if (other.isPresent()) {
                    moved.put(rate, other.get().number() - number(middle, rate));
                    Map<Variable, Input> inputs = new LinkedHashMap<>(middle);
                    inputs.put(rate, other.get());
                    others.add(answer(pattern.plan(base.read(base.with(inputs)))));
                }
            }
            RunFromResponses first = answer(pattern.plan());
            boolean exact = first.reasonToSimulate().isEmpty()
                    && others.stream()
                            .allMatch(other -> other.reasonToSimulate().isEmpty());
            return exact ? Optional.of(new LinearRuns(first, others)) : Optional.empty();
        } catch (InputException notAllValid) {
            return Optional.empty();
        }
    }

    private Optional<Input> elsewhere(Variable rate) {
        return ELSEWHERE.stream()
                .map(rate.variation()::at)
                .filter(input -> input.number() != number(middle, rate))
                .findFirst();
    }

    private static double number(Map<Variable, Input> inputs, Variable variable) {
        return Objects.requireNonNull(inputs.get(variable)).number();
    }

    private RunFromResponses answer(RunPlan plan) {
        return new RunFromResponses(plan, responses, SOURCE);
    }

    /**
     * A run that was answered.
     *
     * @param run the run
     * @param way how, in a few words
     */
    record Answer(FinishedRun run, String way) {}

    /** The plan of a run of the group. */
    RunPlan plan(ScenarioReading reading) throws InputException {
        return pattern.plan(reading);
    }

    /**
     * Answers a run of the group.
     *
     * @param inputs what it gets
     * @param reading its document, which is valid
     * @return the answer; empty if its accuracy is not enough
     * @throws InputException if it is not valid on the grid
     */
    Optional<Answer> answer(Map<Variable, Input> inputs, ScenarioReading reading) throws InputException {
        if (linear.isPresent()) {
            double[] shares = moved.entrySet().stream()
                    .mapToDouble(
                            rate -> (number(inputs, rate.getKey()) - number(middle, rate.getKey())) / rate.getValue())
                    .toArray();
            Optional<FinishedRun> found = linear.get().at(shares);
            if (found.isPresent()) {
                return Optional.of(new Answer(found.get(), LINEAR));
            }
        }
        RunFromResponses answer = answer(plan(reading));
        return answer.reasonToSimulate().isPresent()
                ? Optional.empty()
                : Optional.of(new Answer(answer.withoutCauses(interference), SUPERPOSED));
    }
}

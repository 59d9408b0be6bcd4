package org.headfall.scenarios.sweep.document;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;

/**
 * Reads the base scenario once with each value that is of another form than those before, so that a wrong unit or a file
 * that is not there is found before the first run and not by each of thousands. That a variable has no value at all of an
 * allowed size is found too; single values of a wrong size, and values that do not fit together, are left to the runs.
 */
final class ValueCheck {

    /** Kinds of problem that no other value of another variable can mend. */
    private static final Set<ProblemKind> OF_A_VALUE_ALONE = EnumSet.of(
            ProblemKind.UNKNOWN_KEY,
            ProblemKind.MISSING_KEY,
            ProblemKind.DUPLICATE_KEY,
            ProblemKind.WRONG_TYPE,
            ProblemKind.EMPTY_VALUE,
            ProblemKind.NOT_A_NUMBER,
            ProblemKind.DECIMAL_COMMA,
            ProblemKind.MISSING_UNIT,
            ProblemKind.UNKNOWN_UNIT,
            ProblemKind.WRONG_UNIT,
            ProblemKind.NOT_A_CHOICE,
            ProblemKind.NOT_A_DATE,
            ProblemKind.FILE_MISSING,
            ProblemKind.FILE_OUTSIDE_FOLDER,
            ProblemKind.FILE_UNREADABLE,
            ProblemKind.FILE_TOO_LARGE,
            ProblemKind.SYNTAX,
            ProblemKind.ENCODING,
            ProblemKind.MISSING_COLUMN);

    /** Values that are no numbers are few as a rule; of more, the rest is left to the runs. */
    private static final int MOST_VALUES = 200;

    private static final double HALF = 0.5;

    /** Where a distribution is looked at to find that no value of it is allowed; the middle first, for the message. */
    private static final double[] ACROSS = {HALF, 1e-4, 0.1, 0.9, 1 - 1e-4};

    /** Sweeps of more runs are not looked through for one that is allowed: whether any is shows when they are made. */
    private static final int MOST_RUNS = 1000;

    private final BaseScenario base;
    private final String sweepDocument;
    private final Problems problems;

    /**
     * A check.
     *
     * @param base the base scenario, without problems
     * @param sweepDocument name of the sweep document in messages
     * @param problems receives what is wrong
     */
    ValueCheck(BaseScenario base, String sweepDocument, Problems problems) {
        this.base = base;
        this.sweepDocument = sweepDocument;
        this.problems = problems;
    }

    void check(List<Variable> variables) {
        for (Variable variable : variables) {
            Input middle = variable.variation().at(HALF);
            if (variable.numeric()) {
                ofValueAlone(variable, middle).forEach(problems::add);
            } else if (variable.variation().isDrawn()) {
                // Random fields differ in nothing but their number.
                ofField(variable, middle).forEach(problems::add);
            } else if (variable.variation() instanceof Variation.Listed listed) {
                listed.inputs().stream()
                        .limit(MOST_VALUES)
                        .flatMap(input -> ofValueAlone(variable, input).stream())
                        .forEach(problems::add);
            }
        }
    }

    /**
     * Refuses a variable whose values are of a size that is not allowed in any run of the sweep. It is said only where every
     * run was looked at, as a value may be allowed beside few values of another variable.
     *
     * @param runs all runs of the sweep
     * @param variables its variables
     */
    void checkSizes(RunList runs, List<Variable> variables) {
        if (runs.size() <= MOST_RUNS) {
            variables.stream()
                    .filter(Variable::numeric)
                    .flatMap(variable -> neverInRange(variable, runs).stream())
                    .forEach(problems::add);
        }
    }

    private List<Problem> ofValueAlone(Variable variable, Input input) {
        List<Problem> found = with(Map.of(variable, input)).stream()
                .filter(problem -> OF_A_VALUE_ALONE.contains(problem.kind()))
                .toList();
        List<Problem> here = found.stream().filter(this::isHere).toList();
        // What follows from a wrong value elsewhere in the base document says nothing new.
        return here.isEmpty() ? found : here;
    }

    private List<Problem> ofField(Variable variable, Input input) {
        List<Problem> here =
                with(Map.of(variable, input)).stream().filter(this::isHere).toList();
        return here.isEmpty() ? ofValueAlone(variable, input) : here;
    }

    /** Problems of size, if the value of a variable is not allowed in any run. */
    private List<Problem> neverInRange(Variable variable, RunList runs) {
        if (outOfRange(Map.of(variable, variable.variation().at(HALF))).isEmpty()) {
            return List.of();
        }
        Map<Place, Problem> found = new LinkedHashMap<>();
        for (Input input : across(variable)) {
            List<Problem> wrong = outOfRange(Map.of(variable, input));
            if (wrong.isEmpty()) {
                return List.of();
            }
            wrong.forEach(problem -> found.putIfAbsent(problem.place(), problem));
        }
        Set<String> subjects = found.values().stream().map(Problem::subject).collect(Collectors.toSet());
        for (Map<Variable, Input> inputs : runs) {
            if (outOfRange(inputs).stream().noneMatch(problem -> subjects.contains(problem.subject()))) {
                return List.of();
            }
        }
        return List.copyOf(found.values());
    }

    /** Values of a variable from its least to its greatest; of a distribution some. */
    private static List<Input> across(Variable variable) {
        return variable.variation() instanceof Variation.Listed listed
                ? listed.inputs().stream().limit(MOST_VALUES).toList()
                : DoubleStream.of(ACROSS).mapToObj(variable.variation()::at).toList();
    }

    private List<Problem> outOfRange(Map<Variable, Input> inputs) {
        return with(inputs).stream()
                .filter(problem -> problem.kind() == ProblemKind.OUT_OF_RANGE && isHere(problem))
                .toList();
    }

    private List<Problem> with(Map<Variable, Input> inputs) {
        return base.read(base.with(inputs)).problems().sorted();
    }

    private boolean isHere(Problem problem) {
        return problem.place().file().equals(sweepDocument);
    }
}

package org.headfall.scenarios.sweep.document;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;

/**
 * Reads the base scenario once with each value that is of another form than those before, so that a wrong unit or a file
 * that is not there is found before the first run and not by each of thousands. What is a question of size, such as a
 * transmissivity of zero, or of values that fit together, is left to the runs.
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
            inputs(variable).stream().limit(MOST_VALUES).forEach(input -> check(variable, input));
        }
    }

    /** Values of one unit are of one form. */
    private static List<Input> inputs(Variable variable) {
        boolean alike = variable.numeric() || variable.variation().isDrawn();
        return variable.variation() instanceof Variation.Listed listed && !alike
                ? listed.inputs()
                : List.of(variable.variation().at(0.5));
    }

    private void check(Variable variable, Input input) {
        List<Problem> found = base.read(base.with(Map.of(variable, input))).problems().sorted().stream()
                .filter(problem -> OF_A_VALUE_ALONE.contains(problem.kind()))
                .toList();
        List<Problem> here = found.stream()
                .filter(problem -> problem.place().file().equals(sweepDocument))
                .toList();
        // What follows from a wrong value elsewhere in the base document says nothing new.
        (here.isEmpty() ? found : here).forEach(problems::add);
    }
}

package org.headfall.scenarios.reading;

import java.util.Optional;
import org.headfall.scenarios.document.ScenarioFolder;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.Scenario;

/**
 * What came of reading a document.
 *
 * @param scenario the scenario; empty if and only if there are problems
 * @param problems what is wrong
 * @param folder the files that were used, with their hashes on demand
 */
public record ScenarioReading(Optional<Scenario> scenario, Problems problems, ScenarioFolder folder) {
    /**
     * The scenario.
     *
     * @throws InputException with all problems, if there are any
     */
    public Scenario orThrow() throws InputException {
        problems.throwIfAny();
        return scenario.orElseThrow();
    }
}

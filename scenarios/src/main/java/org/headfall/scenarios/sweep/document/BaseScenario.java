package org.headfall.scenarios.sweep.document;

import java.nio.file.Path;
import java.util.Map;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.RunPlan;

/**
 * The scenario that is varied.
 *
 * @param document its file
 * @param node the document as it stands
 * @param reach which files it may name
 * @param plan the run as it stands
 */
public record BaseScenario(Path document, DocumentNode node, FileReach reach, RunPlan plan) {

    /**
     * The document of a run.
     *
     * @param inputs what the run gets for each variable
     * @return the changed document
     */
    public DocumentNode with(Map<Variable, Input> inputs) {
        DocumentNode changed = node;
        for (Map.Entry<Variable, Input> input : inputs.entrySet()) {
            for (KeyPath key : input.getKey().keys()) {
                changed = key.replaced(changed, input.getValue().value());
            }
        }
        return changed;
    }

    /**
     * Reads the document of a run, with every check of a scenario.
     *
     * @param changed the document
     * @return what came of it
     */
    public ScenarioReading read(DocumentNode changed) {
        return ScenarioReader.read(changed, document, reach);
    }
}

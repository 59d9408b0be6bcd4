package org.headfall.scenarios.recording;

import java.util.List;

/**
 * Where a run came from: enough to run it again.
 *
 * @param toolVersion program and version, such as "Headfall 0.1.0"
 * @param scenarioText the scenario document, to the letter
 * @param inputs every file read, the document first
 */
public record Provenance(String toolVersion, String scenarioText, List<InputFile> inputs) {

    /** Copies the list. */
    public Provenance {
        inputs = List.copyOf(inputs);
    }
}

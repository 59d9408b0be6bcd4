package org.headfall.scenarios.report;

import java.util.Map;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** What a scenario document says that it is for. */
final class ScenarioQuestion {

    private ScenarioQuestion() {}

    /** The description in a document, blank if it has none or cannot be read any more. */
    static String of(String document) {
        try {
            Object root = new Load(LoadSettings.builder().build()).loadFromString(document);
            Object description = root instanceof Map<?, ?> keys ? keys.get("description") : null;
            return description == null ? "" : description.toString().strip();
        } catch (YamlEngineException unreadable) {
            return "";
        }
    }
}

package org.headfall.scenarios.sweep.work;

import java.util.LinkedHashMap;
import java.util.Map;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

/** Inputs of a run as a JSON object: the name of each variable with its value as text. */
public final class InputsJson {

    private static final ObjectMapper MAPPER = JsonMapper.builder().build();

    private InputsJson() {}

    static String of(Map<Variable, Input> inputs) {
        Map<String, String> texts = new LinkedHashMap<>();
        inputs.forEach((variable, input) -> texts.put(variable.name(), input.text()));
        return MAPPER.writeValueAsString(texts);
    }

    /**
     * The texts again.
     *
     * @param json what a store keeps
     * @return value of each variable by its name, in the order of the document
     */
    public static Map<String, String> read(String json) {
        return MAPPER.readValue(json, new TypeReference<LinkedHashMap<String, String>>() {});
    }
}

package org.headfall.scenarios.results;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.responses.KeyPart;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.UnitResponses;

/**
 * Unit responses as they stand in a folder of results, before it is known whether they hold for another run.
 *
 * @param folder the folder
 * @param attributes attributes of their file, which hold the parts of their key
 * @param responses responses of every station to every bore and spring
 * @param headAtStart head of each station without any bore and spring at the start (m above datum)
 * @param rises rise of head at each station by a unit inflow of each changing source
 */
@SuppressWarnings("ArrayRecordComponent") // one number a station, handed on and never compared
public record ReadResponses(
        Path folder,
        Map<String, String> attributes,
        UnitResponses responses,
        double[] headAtStart,
        ResponseTable rises) {

    /** Copies the map. */
    public ReadResponses {
        attributes = Map.copyOf(attributes);
    }

    /** The responses with their key; a part that the file does not have counts as another. */
    public StoredResponses stored() {
        Map<KeyPart, String> parts = new EnumMap<>(KeyPart.class);
        for (KeyPart part : KeyPart.values()) {
            parts.put(part, attributes.getOrDefault(ResponsesFile.attribute(part), ""));
        }
        return new StoredResponses(new ResponseKey(parts), responses, headAtStart, rises);
    }

    /**
     * The responses, if they hold for another run.
     *
     * @param wanted key of the other run
     * @return the responses
     * @throws ResultsException if what they depend on differs; the message names all that does
     */
    public StoredResponses matching(ResponseKey wanted) throws ResultsException {
        StoredResponses stored = stored();
        List<String> differences = wanted.differencesTo(stored.key());
        if (!differences.isEmpty()) {
            throw new ResultsException(
                    ResultsException.Kind.OF_ANOTHER_AQUIFER,
                    folder,
                    "its unit responses do not hold for this scenario, which differs in: "
                            + String.join("; ", differences) + ". Run the scenario in full (headfall run)");
        }
        return stored;
    }
}

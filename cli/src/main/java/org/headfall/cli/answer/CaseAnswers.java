package org.headfall.cli.answer;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The answers of all cases of a document.
 *
 * @param cases the answer of each case by its name, in order
 * @param folder folder of the results of all
 */
public record CaseAnswers(Map<String, RunAnswer> cases, String folder) {

    /** Copies the map, keeping its order. */
    public CaseAnswers {
        cases = Collections.unmodifiableMap(new LinkedHashMap<>(cases));
    }
}

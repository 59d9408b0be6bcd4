package org.headfall.scenarios.document;

import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/**
 * A fault of YAML in words for people who do not know how YAML is parsed. What has no words of its own keeps those of
 * the parser.
 *
 * @param found what was found
 * @param allowed what is allowed
 */
record SyntaxWords(String found, String allowed) {
    private static final String ALLOWED = "YAML: spaces for indentation, a colon and a space after each key, quotes"
            + " around texts with colons or brackets, brackets in pairs";

    private static final Map<String, String> CONTEXTS = Map.of(
            "while parsing a flow mapping", "in the braces opened",
            "while parsing a flow sequence", "in the brackets opened",
            "while parsing a block mapping", "in the keys that begin",
            "while parsing a block collection", "in the list that begins",
            "while scanning a simple key", "in the key",
            "while scanning a quoted scalar", "in the quotes opened",
            "while scanning a double-quoted scalar", "in the quotes opened");

    static SyntaxWords of(MarkedYamlEngineException syntax, Optional<Integer> contextLine) {
        String problem = String.valueOf(syntax.getProblem());
        if (problem.contains("\\t(TAB)")) {
            return new SyntaxWords("a tab", "spaces for indentation, no tabs");
        }
        if (problem.equals("mapping values are not allowed here")) {
            return new SyntaxWords(
                    "a colon that cannot stand here",
                    "one key a line, quotes around a text with a colon and a space in it,"
                            + " the keys of a section one below the other");
        }
        String context = String.valueOf(syntax.getContext());
        String where = CONTEXTS.containsKey(context) && contextLine.isPresent()
                ? ", " + CONTEXTS.get(context) + " in line " + (contextLine.get() + 1)
                : "";
        return new SyntaxWords(inWords(problem) + where, ALLOWED);
    }

    private static String inWords(String problem) {
        if (problem.equals("could not find expected ':'")) {
            return "a line without a colon";
        }
        if (problem.startsWith("found unexpected end of stream")) {
            return "the end of the file";
        }
        return problem.replace("<block end>", "the end of a section")
                .replace("<block mapping start>", "a key further in")
                .replace("<stream end>", "the end of the file");
    }
}

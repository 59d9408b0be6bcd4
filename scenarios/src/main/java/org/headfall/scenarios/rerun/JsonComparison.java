package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Compares two documents of JSON value by value. */
final class JsonComparison {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final Tally tally = new Tally();
    private final UnaryOperator<String> versionNow;
    private final Set<String> leftOut;

    /**
     * A comparison.
     *
     * @param versionNow puts the version of the program that runs in place of that which made the results
     * @param leftOut paths of values that are not compared, such as {@code figures.peakMemory}
     */
    JsonComparison(UnaryOperator<String> versionNow, Set<String> leftOut) {
        this.versionNow = versionNow;
        this.leftOut = Set.copyOf(leftOut);
    }

    FileComparison of(Path before, Path now) throws IOException {
        JsonNode kept = UnreadableException.ifNotRead(() -> MAPPER.readTree(Files.readString(before)));
        compare("", kept, MAPPER.readTree(Files.readString(now)));
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compare(String path, JsonNode before, JsonNode now) {
        if (leftOut.contains(path)) {
            return;
        }
        if (before.getNodeType() != now.getNodeType()) {
            tally.differs(path, words(before), words(now));
        } else if (before.isObject()) {
            Set<String> names = new TreeSet<>(before.propertyNames());
            names.addAll(now.propertyNames());
            for (String name : names) {
                compare(path.isEmpty() ? name : path + "." + name, before.path(name), now.path(name));
            }
        } else if (before.isArray()) {
            for (int i = 0; i < Math.max(before.size(), now.size()); i++) {
                compare(path + " " + (i + 1), before.path(i), now.path(i));
            }
        } else {
            tally.texts(versionNow.apply(before.asString("")), now.asString(""), () -> path);
        }
    }

    private static String words(JsonNode node) {
        return switch (node.getNodeType()) {
            case MISSING -> "missing";
            case NULL -> "no value";
            case OBJECT -> "an object of " + node.size() + " values";
            case ARRAY -> "a list of " + node.size() + " values";
            case STRING -> "the text '" + node.asString() + "'";
            default -> node.asString("");
        };
    }
}

package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import tools.jackson.core.JacksonException;
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
        try {
            compare("", MAPPER.readTree(Files.readString(before)), MAPPER.readTree(Files.readString(now)));
        } catch (JacksonException e) {
            throw new IOException("no document can be read from it", e);
        }
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compare(String path, JsonNode before, JsonNode now) {
        if (leftOut.contains(path)) {
            return;
        }
        if (before.isObject() && now.isObject()) {
            Set<String> names = new TreeSet<>(before.propertyNames());
            names.addAll(now.propertyNames());
            for (String name : names) {
                compare(path.isEmpty() ? name : path + "." + name, before.path(name), now.path(name));
            }
        } else if (before.isArray() && now.isArray()) {
            for (int i = 0; i < Math.max(before.size(), now.size()); i++) {
                compare(path + " " + (i + 1), before.path(i), now.path(i));
            }
        } else {
            tally.texts(versionNow.apply(before.asString("")), now.asString(""), () -> path);
        }
    }
}

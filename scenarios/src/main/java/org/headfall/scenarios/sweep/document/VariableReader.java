package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/** Reads the list {@code vary}. */
final class VariableReader {

    private static final String DEFAULT_SEED = "1";

    private final Section document;
    private final @Nullable DocumentNode base;
    private final Map<KeyPath, String> taken = new HashMap<>();
    private final Set<String> refused = new HashSet<>();

    /**
     * A reader.
     *
     * @param document the sweep document
     * @param base the base document; null if it cannot be read
     */
    VariableReader(Section document, @Nullable DocumentNode base) {
        this.document = document;
        this.base = base;
    }

    List<Variable> read() {
        List<Variable> variables = new ArrayList<>();
        Set<String> names = new HashSet<>();
        // Whether it is a number is seen to where the design is read.
        String seed = document.optionalNode("seed") instanceof DocumentNode.Scalar scalar && !scalar.isEmpty()
                ? scalar.text().strip()
                : DEFAULT_SEED;
        for (Section section : Entries.sections(document, "vary")) {
            @Nullable String name = section.text("name");
            List<KeyPath> keys = keys(section, name == null ? "" : name);
            @Nullable
            Variation variation =
                    new VariationReader(section, name == null ? section.nameOf("name") : name, seed).read();
            section.done();
            if (name != null && !names.add(name)) {
                section.refuse("name", Finding.of(ProblemKind.DUPLICATE_NAME, name, "a name of its own"));
            }
            if (name == null || variation == null) {
                refused.add(name == null ? "" : name);
                continue;
            }
            @Nullable String unit = VariationReader.unit(variation);
            variables.add(new Variable(name, keys, variation, unit != null, unit == null ? "" : unit));
        }
        if (variables.isEmpty() && document.values().problems().isEmpty()) {
            document.refuse("vary", Finding.of(ProblemKind.EMPTY_VALUE, "nothing", "a list of what varies"));
        }
        return variables;
    }

    /** Names of variables that are not among those read, because of problems that have been reported. */
    Set<String> refused() {
        return refused;
    }

    private List<KeyPath> keys(Section section, String name) {
        @Nullable String key = Entries.onlyOneOf(section, name.isEmpty() ? "key" : name, List.of("key", "keys"));
        if (key == null) {
            return List.of();
        }
        @Nullable String single = key.equals("key") ? section.text("key") : null;
        List<String> texts = single == null ? Entries.texts(section, "keys") : List.of(single);
        List<KeyPath> paths = new ArrayList<>();
        for (String text : texts) {
            @Nullable KeyPath path = path(section, key, text);
            if (path != null && isFree(section, key, path, name)) {
                paths.add(path);
            }
        }
        return paths;
    }

    private @Nullable KeyPath path(Section section, String key, String text) {
        if (base == null) {
            return null;
        }
        try {
            return KeyPath.find(text, base);
        } catch (KeyPath.NoSuchKeyException wrong) {
            section.refuse(key, wrong.finding());
            return null;
        }
    }

    /** Two variables on one value would hide each other. */
    private boolean isFree(Section section, String key, KeyPath path, String name) {
        for (Map.Entry<KeyPath, String> other : taken.entrySet()) {
            if (path.overlaps(other.getKey())) {
                section.refuse(
                        key,
                        Finding.of(
                                ProblemKind.DUPLICATE_KEY,
                                path + ", which " + other.getValue() + " varies by " + other.getKey(),
                                "each value varied once"));
                return false;
            }
        }
        taken.put(path, name.isEmpty() ? "another entry" : name);
        return true;
    }
}

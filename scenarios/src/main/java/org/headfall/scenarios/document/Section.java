package org.headfall.scenarios.document;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * The keys of one mapping. A reader asks for each key it knows and ends with {@link #done()}, which reports the keys
 * nobody asked for, with the nearest that are known.
 *
 * <p>The methods named {@code optional...} return null if the key is absent; the others report an absent key as
 * missing. All return null after they have reported a problem, so that the reader can go on and find the next.
 */
public final class Section {
    private final Place place;
    private final String path;
    private final ValueReader values;
    private final Map<String, DocumentNode.Entry> entries = new LinkedHashMap<>();
    private final Set<String> known = new LinkedHashSet<>();
    private final Map<String, Set<String>> knownWithin = new LinkedHashMap<>();

    private Section(DocumentNode.Mapping mapping, String path, ValueReader values) {
        this.place = mapping.place();
        this.path = path;
        this.values = values;
        mapping.entries().forEach(entry -> entries.put(entry.key(), entry));
    }

    /**
     * The section a node holds.
     *
     * @param node the node
     * @param path its name in messages, such as {@code grid.extent}; empty for the document itself
     * @param problems receives what is wrong
     * @return the section, or null if the node does not hold keys and values
     */
    public static @Nullable Section of(DocumentNode node, String path, Problems problems) {
        if (node instanceof DocumentNode.Mapping mapping) {
            return new Section(mapping, path, new ValueReader(problems));
        }
        ProblemKind kind = node instanceof DocumentNode.Scalar scalar && scalar.isEmpty()
                ? ProblemKind.EMPTY_VALUE
                : ProblemKind.WRONG_TYPE;
        String subject = path.isEmpty() ? node.place().file() : path;
        problems.add(node.place(), subject, Finding.of(kind, node.shown(), "keys and values"));
        return null;
    }

    /** Where the section begins. */
    public Place place() {
        return place;
    }

    /** Reads the nodes of this section. */
    public ValueReader values() {
        return values;
    }

    /**
     * Where the value of a key begins; where the section begins if the key is absent.
     *
     * @param key the key
     */
    public Place placeOf(String key) {
        DocumentNode.@Nullable Entry entry = entries.get(key);
        return entry == null ? place : entry.value().place();
    }

    /**
     * The name of a key in messages, such as {@code grid.cell}.
     *
     * @param key the key
     */
    public String nameOf(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    /**
     * Whether a key is there. The key is known from then on.
     *
     * @param key the key
     */
    public boolean has(String key) {
        known.add(key);
        return entries.containsKey(key);
    }

    /**
     * The value of a key that must be there.
     *
     * @param key the key
     */
    public @Nullable DocumentNode node(String key) {
        @Nullable DocumentNode node = optionalNode(key);
        if (node == null) {
            values.problems().add(place, nameOf(key), missing(key));
        }
        return node;
    }

    private Finding missing(String key) {
        List<String> others = new ArrayList<>(entries.keySet());
        others.removeAll(known);
        @Nullable String near = NearestSpelling.of(key, others);
        return Finding.of(ProblemKind.MISSING_KEY, near == null ? "nothing under this name" : near, "the key " + key);
    }

    /**
     * The value of a key, or null.
     *
     * @param key the key
     */
    public @Nullable DocumentNode optionalNode(String key) {
        known.add(key);
        DocumentNode.@Nullable Entry entry = entries.get(key);
        return entry == null ? null : entry.value();
    }

    /**
     * A text.
     *
     * @param key the key
     */
    public @Nullable String text(String key) {
        @Nullable DocumentNode node = node(key);
        return node == null ? null : values.text(node, nameOf(key));
    }

    /**
     * A text, if the key is there.
     *
     * @param key the key
     */
    public @Nullable String optionalText(String key) {
        return has(key) ? text(key) : null;
    }

    /**
     * A quantity.
     *
     * @param key the key
     * @param dimension what it has to measure
     * @param range the range it has to lie in
     */
    public @Nullable Quantity quantity(String key, Dimension dimension, AllowedRange range) {
        @Nullable DocumentNode node = node(key);
        return node == null ? null : values.quantity(node, nameOf(key), dimension, range);
    }

    /**
     * A quantity, if the key is there.
     *
     * @param key the key
     * @param dimension what it has to measure
     * @param range the range it has to lie in
     */
    public @Nullable Quantity optionalQuantity(String key, Dimension dimension, AllowedRange range) {
        return has(key) ? quantity(key, dimension, range) : null;
    }

    /**
     * A date.
     *
     * @param key the key
     */
    public @Nullable LocalDate date(String key) {
        @Nullable DocumentNode node = node(key);
        return node == null ? null : values.date(node, nameOf(key));
    }

    /**
     * A date, if the key is there.
     *
     * @param key the key
     */
    public @Nullable LocalDate optionalDate(String key) {
        return has(key) ? date(key) : null;
    }

    /**
     * One of several words.
     *
     * @param key the key
     * @param choices the words and what they stand for
     */
    public <T> @Nullable T choice(String key, Map<String, T> choices) {
        @Nullable DocumentNode node = node(key);
        return node == null ? null : values.choice(node, nameOf(key), choices);
    }

    /**
     * One of several words, if the key is there.
     *
     * @param key the key
     * @param choices the words and what they stand for
     */
    public <T> @Nullable T optionalChoice(String key, Map<String, T> choices) {
        return has(key) ? choice(key, choices) : null;
    }

    /**
     * A section.
     *
     * @param key the key
     */
    public @Nullable Section section(String key) {
        @Nullable DocumentNode node = node(key);
        @Nullable Section within = node == null ? null : of(node, nameOf(key), values.problems());
        if (within != null) {
            knownWithin.put(key, within.known);
        }
        return within;
    }

    /**
     * A section, if the key is there.
     *
     * @param key the key
     */
    public @Nullable Section optionalSection(String key) {
        return has(key) ? section(key) : null;
    }

    /**
     * The entries of a list; none if the key is absent or its value is not a list, which is reported.
     *
     * @param key the key
     */
    public List<DocumentNode> optionalList(String key) {
        @Nullable DocumentNode node = optionalNode(key);
        if (node == null) {
            return List.of();
        }
        if (node instanceof DocumentNode.Listing listing) {
            return listing.entries();
        }
        refuse(key, Finding.of(ProblemKind.WRONG_TYPE, node.shown(), "a list, each entry after a dash"));
        return List.of();
    }

    /**
     * Reports a problem with the value of a key.
     *
     * @param key the key
     * @param finding what is wrong
     */
    public void refuse(String key, Finding finding) {
        values.problems().add(placeOf(key), nameOf(key), finding);
    }

    /**
     * Says which keys a section within this one knows, for who writes one of them a level too high without that section.
     *
     * @param key the key of that section
     * @param keys the keys it knows
     */
    public void knowsWithin(String key, Set<String> keys) {
        knownWithin.put(key, keys);
    }

    /** Reports every key that nobody asked for; of one that a section within this one knows, it says so. */
    public void done() {
        for (DocumentNode.Entry entry : entries.values()) {
            if (!known.contains(entry.key())) {
                values.problems().add(entry.keyPlace(), nameOf(entry.key()), unknown(entry.key()));
            }
        }
    }

    private Finding unknown(String key) {
        List<String> unused = new ArrayList<>(known);
        unused.removeAll(entries.keySet());
        String keys = String.join(", ", known);
        List<String> within = knownWithin.keySet().stream()
                .filter(section -> knownWithin.getOrDefault(section, Set.of()).contains(key))
                .map(this::nameOf)
                .toList();
        String place = within.isEmpty() ? "" : "; " + key + " belongs in " + String.join(" or ", within);
        return new Finding(ProblemKind.UNKNOWN_KEY, key, keys + place, NearestSpelling.of(key, unused));
    }
}

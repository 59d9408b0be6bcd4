package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/**
 * The way to a value in a document: keys and, in lists, the {@code name} of an entry or its number from 1, with points
 * between them, such as {@code bores.Town 1.rate} or {@code boundaries.2.fixed_head}. Names may have points in them.
 *
 * @param text the path as typed
 * @param steps for each level, the place of the entry among its neighbours, from 0
 */
public record KeyPath(String text, List<Integer> steps) {

    /** Copies the list. */
    public KeyPath {
        steps = List.copyOf(steps);
    }

    /** A path that leads nowhere. */
    public static final class NoSuchKeyException extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient Finding finding;

        NoSuchKeyException(Finding finding) {
            super(finding.found());
            this.finding = finding;
        }

        Finding finding() {
            return finding;
        }
    }

    /** One thing that a path may lead to from some node: what it is called there and what it is. */
    private record Way(String name, int place, DocumentNode node) {
        boolean begins(String rest) {
            return rest.equals(name) || rest.startsWith(name + ".");
        }
    }

    /**
     * Finds a value that is there.
     *
     * @param text the path
     * @param document the document
     * @return the path
     * @throws NoSuchKeyException if the document has nothing there
     */
    public static KeyPath find(String text, DocumentNode document) throws NoSuchKeyException {
        List<Integer> steps = new ArrayList<>();
        DocumentNode node = document;
        String rest = text;
        while (!rest.isEmpty()) {
            Way way = next(rest, node, text);
            steps.add(way.place());
            node = way.node();
            rest = rest.substring(Math.min(rest.length(), way.name().length() + 1));
        }
        return new KeyPath(text, steps);
    }

    /** The longest name that the path can go on with, for one name may begin like another. */
    private static Way next(String rest, DocumentNode node, String whole) throws NoSuchKeyException {
        List<Way> ways = ways(node);
        @Nullable Way longest = null;
        for (Way way : ways) {
            if (way.begins(rest)
                    && (longest == null || way.name().length() > longest.name().length())) {
                longest = way;
            }
        }
        if (longest == null) {
            throw new NoSuchKeyException(nothing(rest, whole, ways));
        }
        return longest;
    }

    private static List<Way> ways(DocumentNode node) {
        List<Way> ways = new ArrayList<>();
        if (node instanceof DocumentNode.Mapping mapping) {
            for (DocumentNode.Entry entry : mapping.entries()) {
                ways.add(new Way(entry.key(), ways.size(), entry.value()));
            }
        } else if (node instanceof DocumentNode.Listing listing) {
            List<DocumentNode> entries = listing.entries();
            for (int i = 0; i < entries.size(); i++) {
                @Nullable String name = name(entries.get(i));
                if (name != null) {
                    ways.add(new Way(name, i, entries.get(i)));
                }
            }
            for (int i = 0; i < entries.size(); i++) {
                ways.add(new Way(Integer.toString(i + 1), i, entries.get(i)));
            }
        }
        return ways;
    }

    private static @Nullable String name(DocumentNode entry) {
        if (entry instanceof DocumentNode.Mapping mapping) {
            for (DocumentNode.Entry key : mapping.entries()) {
                if (key.key().equals("name") && key.value() instanceof DocumentNode.Scalar scalar) {
                    return scalar.text().strip();
                }
            }
        }
        return null;
    }

    private static Finding nothing(String rest, String whole, List<Way> ways) {
        List<String> names = ways.stream().map(Way::name).toList();
        if (names.isEmpty()) {
            return Finding.of(
                    ProblemKind.UNKNOWN_KEY,
                    whole + ", which goes on beyond a single value",
                    "the keys of a value that stands in the base document");
        }
        int point = rest.indexOf('.');
        String wrong = point < 0 ? rest : rest.substring(0, point);
        @Nullable String near = NearestSpelling.of(wrong, names);
        String before = whole.substring(0, whole.length() - rest.length());
        return new Finding(
                ProblemKind.UNKNOWN_KEY,
                wrong + (before.isEmpty() ? "" : " under " + before.substring(0, before.length() - 1)),
                "what stands there in the base document: " + String.join(", ", names),
                near == null ? null : before + near + (point < 0 ? "" : rest.substring(point)));
    }

    /**
     * The value at the end of this path.
     *
     * @param document a document with the shape of the one that the path was found in
     */
    public DocumentNode in(DocumentNode document) {
        DocumentNode node = document;
        for (int step : steps) {
            node = node instanceof DocumentNode.Mapping mapping
                    ? mapping.entries().get(step).value()
                    : ((DocumentNode.Listing) node).entries().get(step);
        }
        return node;
    }

    /**
     * The document with another value at the end of this path.
     *
     * @param document a document with the shape of the one that the path was found in
     * @param value the value
     * @return the changed document; the given one stays as it is
     */
    public DocumentNode replaced(DocumentNode document, DocumentNode value) {
        return replaced(document, 0, value);
    }

    private DocumentNode replaced(DocumentNode node, int depth, DocumentNode value) {
        if (depth == steps.size()) {
            return value;
        }
        int step = steps.get(depth);
        if (node instanceof DocumentNode.Mapping mapping) {
            List<DocumentNode.Entry> entries = new ArrayList<>(mapping.entries());
            DocumentNode.Entry old = entries.get(step);
            DocumentNode changed = replaced(old.value(), depth + 1, value);
            entries.set(step, new DocumentNode.Entry(old.keyPlace(), old.key(), changed));
            return new DocumentNode.Mapping(mapping.place(), List.copyOf(entries));
        }
        DocumentNode.Listing listing = (DocumentNode.Listing) node;
        List<DocumentNode> entries = new ArrayList<>(listing.entries());
        entries.set(step, replaced(entries.get(step), depth + 1, value));
        return new DocumentNode.Listing(listing.place(), List.copyOf(entries));
    }

    /** Whether one path leads to a part of what the other leads to, or to the same. */
    boolean overlaps(KeyPath other) {
        int shorter = Math.min(steps.size(), other.steps.size());
        return steps.subList(0, shorter).equals(other.steps.subList(0, shorter));
    }

    @Override
    public String toString() {
        return text;
    }
}

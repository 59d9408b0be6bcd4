package org.headfall.scenarios.document;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;

/**
 * Builds the tree from the events of the parser, without recursion, so that neither a deep nor a wide document can
 * exhaust the stack; aliases, by which a small file grows without bound, are refused as they are met.
 */
final class NodeBuilder {
    static final int DEEPEST = 20;
    static final int MOST_VALUES = 1_000_000;

    private final String file;
    private final Problems problems;
    private final Deque<Open> open = new ArrayDeque<>();
    private @Nullable DocumentNode document;
    private int documents;
    private int values;

    /** A list or mapping whose end has not come yet. */
    private static final class Open {
        final Place place;
        final boolean mapping;
        final List<DocumentNode> listed = new ArrayList<>();
        final Map<String, Place> keys = new HashMap<>();
        final List<DocumentNode.Entry> entries = new ArrayList<>();
        DocumentNode.@Nullable Scalar key;

        Open(Place place, boolean mapping) {
            this.place = place;
            this.mapping = mapping;
        }

        DocumentNode close() {
            return mapping
                    ? new DocumentNode.Mapping(place, List.copyOf(entries))
                    : new DocumentNode.Listing(place, List.copyOf(listed));
        }
    }

    NodeBuilder(String file, Problems problems) {
        this.file = file;
        this.problems = problems;
    }

    @Nullable
    DocumentNode document() {
        return document;
    }

    /** Takes the next event; false when the document cannot be read further. */
    boolean accept(Event event) {
        if (event instanceof NodeEvent node && !isSupported(node)) {
            return false;
        }
        switch (event.getEventId()) {
            case DocumentStart -> {
                return isOnlyDocument((DocumentStartEvent) event);
            }
            case SequenceStart, MappingStart -> {
                return begin((CollectionStartEvent) event);
            }
            case SequenceEnd, MappingEnd -> add(open.pop().close());
            case Scalar -> {
                ScalarEvent scalar = (ScalarEvent) event;
                add(new DocumentNode.Scalar(placeOf(event), scalar.getValue(), !scalar.isPlain()));
            }
            default -> {
                // the ends of document and stream carry nothing
            }
        }
        return true;
    }

    private boolean isOnlyDocument(DocumentStartEvent event) {
        documents++;
        return documents == 1
                || refuse(event, ProblemKind.NOT_SUPPORTED, "a second document after ---", "one document a file");
    }

    private boolean isSupported(NodeEvent event) {
        values++;
        if (values > MOST_VALUES) {
            String allowed = MOST_VALUES + " values; put long lists into CSV files beside the document";
            return refuse(event, ProblemKind.FILE_TOO_LARGE, "more values", allowed);
        }
        if (event instanceof AliasEvent || event.getAnchor().isPresent()) {
            String found = event instanceof AliasEvent alias
                    ? "*" + alias.getAlias()
                    : "&" + event.getAnchor().orElseThrow();
            return refuse(event, ProblemKind.NOT_SUPPORTED, found, "no anchors and aliases: write the value out");
        }
        Optional<String> tag = tagOf(event);
        return tag.isEmpty()
                || refuse(event, ProblemKind.NOT_SUPPORTED, "the tag " + tag.get(), "no tags: plain values only");
    }

    private static Optional<String> tagOf(NodeEvent event) {
        if (event instanceof ScalarEvent scalar) {
            return scalar.getTag();
        }
        return event instanceof CollectionStartEvent collection ? collection.getTag() : Optional.empty();
    }

    private boolean begin(CollectionStartEvent event) {
        @Nullable Open outer = open.peek();
        if (outer != null && outer.mapping && outer.key == null) {
            return refuse(event, ProblemKind.NOT_SUPPORTED, "a list or mapping as a key", "a word as a key");
        }
        if (open.size() == DEEPEST) {
            return refuse(event, ProblemKind.TOO_DEEP, "another level", "at most " + DEEPEST + " levels");
        }
        open.push(new Open(placeOf(event), event instanceof MappingStartEvent));
        return true;
    }

    private void add(DocumentNode node) {
        @Nullable Open outer = open.peek();
        if (outer == null) {
            document = node;
        } else if (!outer.mapping) {
            outer.listed.add(node);
        } else if (outer.key == null) {
            outer.key = (DocumentNode.Scalar) node;
        } else {
            addEntry(outer, outer.key, node);
            outer.key = null;
        }
    }

    private void addEntry(Open outer, DocumentNode.Scalar key, DocumentNode value) {
        @Nullable Place earlier = outer.keys.putIfAbsent(key.text(), key.place());
        if (earlier == null) {
            outer.entries.add(new DocumentNode.Entry(key.place(), key.text(), value));
        } else {
            Finding finding = Finding.of(
                    ProblemKind.DUPLICATE_KEY, key.text() + ", first in line " + earlier.line(), "each key once");
            problems.add(key.place(), key.text(), finding);
        }
    }

    private boolean refuse(Event event, ProblemKind kind, String found, String allowed) {
        problems.add(placeOf(event), file, Finding.of(kind, found, allowed));
        return false;
    }

    private Place placeOf(Event event) {
        return event.getStartMark()
                .map(mark -> new Place(file, mark.getLine() + 1, mark.getColumn() + 1))
                .orElse(Place.ofFile(file));
    }
}

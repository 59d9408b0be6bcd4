package org.headfall.scenarios.document;

import java.util.List;
import org.headfall.scenarios.problem.Place;

/** A part of a document: a single value, a list or a mapping of keys to values. */
public sealed interface DocumentNode {
    /** Where it begins. */
    Place place();

    /** What it is, in words: "a value", "a list" or "keys and values". */
    String form();

    /** What to print of it in a message. */
    String shown();

    /**
     * A single value as typed.
     *
     * @param place where it begins
     * @param text the value without quotes
     * @param quoted whether it stood in quotes or in a block of text
     */
    record Scalar(Place place, String text, boolean quoted) implements DocumentNode {
        /** Whether nothing was typed: no text, {@code null} or {@code ~}, without quotes. */
        public boolean isEmpty() {
            return text.isBlank() || (!quoted && (text.equals("null") || text.equals("~")));
        }

        @Override
        public String form() {
            return "a value";
        }

        @Override
        public String shown() {
            return isEmpty() ? "nothing" : text;
        }
    }

    /**
     * A list.
     *
     * @param place where it begins
     * @param entries its entries in order
     */
    record Listing(Place place, List<DocumentNode> entries) implements DocumentNode {
        @Override
        public String form() {
            return "a list";
        }

        @Override
        public String shown() {
            return form();
        }
    }

    /**
     * Keys and values; no key twice.
     *
     * @param place where it begins
     * @param entries keys and values in order
     */
    record Mapping(Place place, List<Entry> entries) implements DocumentNode {
        @Override
        public String form() {
            return "keys and values";
        }

        @Override
        public String shown() {
            return form();
        }
    }

    /**
     * A key and its value.
     *
     * @param keyPlace where the key begins
     * @param key the key
     * @param value its value
     */
    record Entry(Place keyPlace, String key, DocumentNode value) {}
}

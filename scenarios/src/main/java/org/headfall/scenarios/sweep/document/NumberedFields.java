package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.DocumentNode;

/**
 * Random fields that differ in nothing but their number.
 *
 * @param description what they have in common, as under the key {@code random} of a scenario but for the number
 */
public record NumberedFields(DocumentNode.Mapping description) {

    static final String NUMBER = "number";

    /**
     * A field as the value of a variable.
     *
     * @param number its number, from 1
     */
    Input input(int number) {
        List<DocumentNode.Entry> entries = new ArrayList<>(description.entries());
        entries.add(entry(NUMBER, Integer.toString(number)));
        DocumentNode.Mapping random = new DocumentNode.Mapping(description.place(), List.copyOf(entries));
        DocumentNode value = new DocumentNode.Mapping(
                description.place(), List.of(new DocumentNode.Entry(description.place(), "random", random)));
        return new Input(value, number, "field " + number);
    }

    private DocumentNode.Entry entry(String key, String text) {
        return new DocumentNode.Entry(
                description.place(), key, new DocumentNode.Scalar(description.place(), text, false));
    }

    /** The same fields with another key in their description. */
    NumberedFields with(String key, String text) {
        List<DocumentNode.Entry> entries = new ArrayList<>(description.entries());
        entries.add(entry(key, text));
        return new NumberedFields(new DocumentNode.Mapping(description.place(), List.copyOf(entries)));
    }
}

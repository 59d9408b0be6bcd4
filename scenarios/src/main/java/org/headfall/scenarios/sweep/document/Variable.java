package org.headfall.scenarios.sweep.document;

import java.util.List;

/**
 * Something that varies from run to run.
 *
 * @param name unique name
 * @param keys the values of the base document that it replaces, all by the same
 * @param variation which values it takes
 * @param numeric whether its values are numbers of one unit, so that larger and smaller mean something
 * @param unit their unit as typed; empty for pure numbers and for values that are none
 */
public record Variable(String name, List<KeyPath> keys, Variation variation, boolean numeric, String unit) {
    /** Copies the list. */
    public Variable {
        keys = List.copyOf(keys);
    }

    /** Name and unit as the head of a column. */
    public String heading() {
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }
}

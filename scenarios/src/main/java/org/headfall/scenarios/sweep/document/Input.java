package org.headfall.scenarios.sweep.document;

import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.problem.Place;

/**
 * A value that a run gets for a variable.
 *
 * @param value as it stands in the document
 * @param number its number, in the unit as typed; its place in the list, from 1, where it is not a number
 * @param text the value in one line, for people and tables; different for different values of a variable
 */
public record Input(DocumentNode value, double number, String text) {

    /** A number with its unit, as if it stood at a place. */
    static Input of(Measure measure, Place place) {
        String text = measure.text();
        return new Input(new DocumentNode.Scalar(place, text, false), measure.number(), text);
    }

    /** A value of a list. */
    static Input of(DocumentNode value, double number) {
        return new Input(value, number, DocumentText.line(value));
    }
}

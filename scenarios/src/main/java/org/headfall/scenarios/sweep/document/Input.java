package org.headfall.scenarios.sweep.document;

import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.problem.Place;

/**
 * A value that a run gets for a variable.
 *
 * @param value as it stands in the document
 * @param number its number, in the unit as typed; its place in the list, from 1, where it is not a number
 */
public record Input(DocumentNode value, double number) {

    private static final Place NOWHERE = Place.ofFile("value of the sweep");

    static Input of(Measure measure) {
        return new Input(new DocumentNode.Scalar(NOWHERE, measure.text(), false), measure.number());
    }

    /** The value in one line. */
    public String text() {
        return DocumentText.line(value);
    }
}

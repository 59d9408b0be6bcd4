package org.headfall.scenarios.problem;

/**
 * Something in the input that is allowed, but may not be meant.
 *
 * @param place where it stands
 * @param text what it is, as a sentence without a full stop
 */
public record Notice(Place place, String text) {
    /** One line: place and text. */
    @Override
    public String toString() {
        return place + ": " + text;
    }
}

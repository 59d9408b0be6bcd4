package org.headfall.scenarios.sweep.results;

import java.util.Optional;

/** Whether a figure grows or shrinks as a variable grows. */
public enum Direction {
    /** The figure grows. */
    RISING("rises", "greater"),
    /** The figure shrinks. */
    FALLING("falls", "less");

    private final String verb;
    private final String comparative;

    Direction(String verb, String comparative) {
        this.verb = verb;
        this.comparative = comparative;
    }

    /**
     * The direction of a difference.
     *
     * @param difference a difference or a correlation
     * @return nothing if it is zero or NaN
     */
    static Optional<Direction> of(double difference) {
        return difference > 0 ? Optional.of(RISING) : difference < 0 ? Optional.of(FALLING) : Optional.empty();
    }

    /** What the figure does, such as "rises". */
    String verb() {
        return verb;
    }

    /** What the figure is where the variable is high, such as "greater". */
    String comparative() {
        return comparative;
    }
}

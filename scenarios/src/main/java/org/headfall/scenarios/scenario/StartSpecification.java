package org.headfall.scenarios.scenario;

/** Heads at the start of the period. */
public sealed interface StartSpecification {
    /**
     * Given heads.
     *
     * @param heads heads (m above datum)
     */
    record GivenHeads(Field heads) implements StartSpecification {}

    /** Heads that would not change if the existing bores went on for ever as they do at the start. */
    record SteadyWithExistingBores() implements StartSpecification {}

    /** Heads that would not change without any bore. */
    record SteadyWithoutBores() implements StartSpecification {}
}

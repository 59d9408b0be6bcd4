package org.headfall.scenarios.scenario;

/** What a bore does. */
public sealed interface BoreOperation {
    /**
     * Pumped at a rate.
     *
     * @param rate rate (m3/d), negative for injection
     */
    record Pumped(TimeCourse rate) implements BoreOperation {}

    /** Flows by itself while the head stands above its outlet. */
    record FreeFlow() implements BoreOperation {}

    /** Shut, capped, or with the pump off. */
    record Off() implements BoreOperation {}
}

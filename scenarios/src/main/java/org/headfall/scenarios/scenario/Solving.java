package org.headfall.scenarios.scenario;

/** How heads through time are found. */
public enum Solving {
    /** By superposition where that keeps the accuracy asked for, and is cheaper; else by steps. */
    AUTOMATIC,
    /** By superposition of unit responses, whatever its error; by steps only where the rules of bores cannot be met so. */
    BY_SUPERPOSITION,
    /** By steps of the grid through time. */
    BY_STEPS
}

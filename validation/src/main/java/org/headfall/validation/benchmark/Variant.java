package org.headfall.validation.benchmark;

/** What is changed in the benchmark problem. */
public enum Variant {
    /** Nothing: square cells, isotropic. */
    PLAIN,
    /** Transmissivity along x 100 times that along y. */
    ANISOTROPIC,
    /** Transmissivity along y 100 times that along x; not among the reference values. */
    ANISOTROPIC_NORTH,
    /** Transmissivity times a log-normal factor that is independent from cell to cell, of variance 1. */
    NOISE,
    /** Transmissivity times 1e-6 on the black squares of a checkerboard of 16 x 16 cells. */
    BLOCKS,
    /** Cells from 1 m at four columns and rows to 5 km. */
    STRETCHED
}

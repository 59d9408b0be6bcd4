package org.headfall.validation.benchmark;

/** A part of the table of bars, which can be left out. */
enum BarPart {
    /** Three steps at n = 1024, beside another program if one is given. */
    SOLVE,
    /** Iterations at twice that n. */
    LARGER,
    /** Iterations on the variants that break weak preconditioners and on sizes that are no power of two. */
    VARIANTS,
    /** From 65 thousand to 16 million cells. */
    GROWTH,
    /** Sixteen right-hand sides at once. */
    SEVERAL,
    /** A run of the example, as a process. */
    EXAMPLE,
    /** Fifty years on one million cells, as a process. */
    FIELD,
    /** A check of the example, as a process. */
    CHECK,
    /** Unit responses of the example and what is answered from them; sites and rates in an invented field; as processes. */
    PLANNING
}

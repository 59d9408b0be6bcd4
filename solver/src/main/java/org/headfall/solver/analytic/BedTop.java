package org.headfall.solver.analytic;

/** What lies on top of a sealing bed that stores water. */
public enum BedTop {
    /** A water table or aquifer whose head stays as it is. */
    FIXED_HEAD,
    /** Tight rock: the bed gives up its own water only. */
    CLOSED
}

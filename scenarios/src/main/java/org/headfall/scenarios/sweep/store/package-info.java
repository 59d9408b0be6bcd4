/**
 * The runs of a sweep on disk: one SQLite file with a row a run, which any program that reads SQLite can open, also while
 * the sweep runs. {@link org.headfall.scenarios.sweep.store.SweepStore} promises that a run that was recorded stays
 * recorded, exactly once, whenever the process or the computer stops: rows are written in transactions that are on the
 * disk before they count (write-ahead log, synchronous = full).
 *
 * <p>All runs are rows from the beginning, as planned. A run is recorded by one update of its row, which changes nothing
 * if the row is no longer planned.
 */
@NullMarked
package org.headfall.scenarios.sweep.store;

import org.jspecify.annotations.NullMarked;

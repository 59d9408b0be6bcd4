/**
 * The proof of a result. First every file of its folder is held against the hash that it had when the run ended: which were
 * changed, are missing, or are not of the run. Then the run is made again from the inputs kept in the folder, into a folder
 * of its own, and the two are compared file by file and value by value: NetCDF variables on all dates, tables, maps,
 * summaries. Values must be the same to the last digit that a file keeps.
 */
@NullMarked
package org.headfall.scenarios.rerun;

import org.jspecify.annotations.NullMarked;

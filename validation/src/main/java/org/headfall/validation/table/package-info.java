/**
 * The closed forms of the solver against every row of the published tables, and against the same rows recomputed to
 * more digits outside the project. Wrong entries of the tables are listed with the evidence.
 */
@NullMarked
package org.headfall.validation.table;

import org.jspecify.annotations.NullMarked;

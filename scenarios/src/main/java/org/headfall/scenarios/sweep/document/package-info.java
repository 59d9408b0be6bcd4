/**
 * What a sweep document says: a base scenario, what varies in it, how runs are chosen, which figures are kept and what is
 * asked of them. {@link org.headfall.scenarios.sweep.document.SweepReader} reads it and reports every problem at once.
 *
 * <p>A variation replaces a value of the base document, named by its {@link
 * org.headfall.scenarios.sweep.document.KeyPath}, before the document is read: whatever can stand there in a scenario can
 * be varied, and each run is checked like any other scenario.
 */
@NullMarked
package org.headfall.scenarios.sweep.document;

import org.jspecify.annotations.NullMarked;

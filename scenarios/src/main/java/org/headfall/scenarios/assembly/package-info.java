/**
 * Makes the solver's flow problem from a scenario: cells from extents, arrays from fields, days from dates.
 *
 * <p>{@link org.headfall.scenarios.assembly.ModelAssembly} is the way in. No files are read and no units converted
 * here; what can still be wrong is what only shows on cells, such as a hole of a raster within the aquifer, a bore that
 * stands in no cell of it, or a boundary shorter than a cell. It is reported with the place in the document.
 */
@NullMarked
package org.headfall.scenarios.assembly;

import org.jspecify.annotations.NullMarked;

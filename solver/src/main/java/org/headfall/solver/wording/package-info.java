/** How messages write numbers. All other packages of the solver may use it but {@code linear}, which stands by itself. */
@NullMarked
package org.headfall.solver.wording;

import org.jspecify.annotations.NullMarked;

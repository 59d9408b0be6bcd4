/** Times loops of the linear solver, in the package of what it times, which shows them to nobody else. */
package org.headfall.solver.linear;

/** Times loops over the sealing bed, in the package of what it times, which shows them to nobody else. */
package org.headfall.solver.flow;

/**
 * Makes the runs of a sweep. {@link org.headfall.scenarios.sweep.work.Sweep} plans them in a store, has an {@link
 * org.headfall.scenarios.sweep.work.RunEngine engine} make what is not recorded yet, each run by one thread of this process or
 * of another computer, and records each as it ends. Which figures a run gets depends
 * on its inputs alone, not on threads, order or computer.
 */
@NullMarked
package org.headfall.scenarios.sweep.work;

import org.jspecify.annotations.NullMarked;

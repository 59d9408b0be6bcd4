/**
 * What a reviewer needs to judge a finished run, from the run's own data: what it was for and does not answer, what it takes
 * for granted, what is in doubt, and a checklist that is filled where the run proves an item and open where people have to
 * judge. Nothing here approves anything.
 */
@NullMarked
package org.headfall.scenarios.evidence;

import org.jspecify.annotations.NullMarked;

/**
 * Makes a {@link org.headfall.scenarios.scenario.Scenario} from a document and the files beside it.
 *
 * <p>{@link org.headfall.scenarios.reading.ScenarioReader} is the way in. One reader a part of the document turns nodes
 * into records; each reports what is wrong and goes on, so that all problems of the document and its tables come out
 * of one reading. Units are converted here and nowhere else.
 */
@NullMarked
package org.headfall.scenarios.reading;

import org.jspecify.annotations.NullMarked;

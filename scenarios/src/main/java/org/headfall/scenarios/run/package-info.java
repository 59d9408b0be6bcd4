/**
 * Runs a scenario from beginning to end: {@link org.headfall.scenarios.run.ScenarioRun} drives the simulation, hands
 * each record to the files, computes findings and limits, and writes tables, maps and the report into one folder.
 *
 * <p>To add an output, implement {@link org.headfall.scenarios.results.RunOutput} and add it to {@link
 * org.headfall.scenarios.run.StandardOutputs}.
 */
@NullMarked
package org.headfall.scenarios.run;

import org.jspecify.annotations.NullMarked;

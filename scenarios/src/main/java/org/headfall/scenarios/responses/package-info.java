/**
 * Unit responses that outlive the run they were computed for. A {@link org.headfall.scenarios.responses.ResponseKey key}
 * of SHA-256 digests says what they depend on, part by part, so that an aquifer, a grid or a place that has changed is
 * found and named; rates, operations, losses and limits are no part of it. Results of a run hold
 * {@link org.headfall.scenarios.responses.StoredResponses} in {@code responses.nc}.
 */
@NullMarked
package org.headfall.scenarios.responses;

import org.jspecify.annotations.NullMarked;

package org.headfall.scenarios.scenario;

import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.spatial.Position;

/**
 * A place whose head is reported and may be named in limits.
 *
 * @param name its name, used once among bores, springs and protected points
 * @param position where it is
 * @param place where the document gives it
 */
public record ProtectedPoint(String name, Position position, Place place) {}

package org.headfall.scenarios.scenario;

import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.spatial.Position;

/**
 * A spring: flows while head stands above its outlet.
 *
 * @param name its name, used once among bores, springs and protected points
 * @param position where it is
 * @param outlet level of the outlet (m above datum)
 * @param conductance flow per metre of head above the outlet (m2/d)
 * @param place where the document gives it
 */
public record SpringSpecification(String name, Position position, double outlet, double conductance, Place place) {}

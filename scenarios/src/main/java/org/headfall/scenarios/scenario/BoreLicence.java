package org.headfall.scenarios.scenario;

import java.util.OptionalDouble;

/**
 * What a licence says of a bore, besides who holds it.
 *
 * @param userClass class of users that it belongs to, such as "stock and domestic"; empty if not given
 * @param zone zone of the plan that it lies in; empty if not given
 * @param entitlement volume that may be taken in a year, as a mean rate (m3/d)
 */
public record BoreLicence(String userClass, String zone, OptionalDouble entitlement) {
    /** Nothing is known. */
    public static final BoreLicence UNKNOWN = new BoreLicence("", "", OptionalDouble.empty());
}

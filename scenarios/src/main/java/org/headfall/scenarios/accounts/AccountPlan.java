package org.headfall.scenarios.accounts;

import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be accounted for.
 *
 * @param waterYearBegins first day of each water year
 * @param bores the bores, in the order of the run
 */
public record AccountPlan(MonthDay waterYearBegins, List<BoreAccount> bores) {
    /** Copies the list. */
    public AccountPlan {
        bores = List.copyOf(bores);
    }

    /**
     * A bore of an account.
     *
     * @param name its name
     * @param holder who holds its licence; empty if not known
     * @param zone the zone it lies in; empty if not known
     * @param entitlement what may be taken in a year (m³)
     * @param meter readings of its meter, if it has one
     */
    public record BoreAccount(
            String name, String holder, String zone, OptionalDouble entitlement, Optional<Meter> meter) {}
}

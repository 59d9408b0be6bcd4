package org.headfall.scenarios.accounts;

import java.time.LocalDate;

/**
 * All water years of one account in a few figures.
 *
 * @param of what the account is of, in the words of {@link WaterAccount.Of}
 * @param name name of the bore, holder or zone; empty for all bores
 * @param years water years that can be compared with an entitlement, for all of their year counts
 * @param yearsOver how many of them took more than the entitlement
 * @param worstFrom first day of the water year with the least left of the entitlement; without any to compare, of that
 *     with the largest volume
 * @param countedMegalitres what counts in that year (ML)
 * @param entitlementMegalitres what may be taken in that year (ML), NaN if it is not known
 */
public record AccountSummary(
        String of,
        String name,
        int years,
        int yearsOver,
        LocalDate worstFrom,
        double countedMegalitres,
        double entitlementMegalitres) {

    /** Whether more than the entitlement was taken in any year. */
    public boolean isOver() {
        return yearsOver > 0;
    }
}

package org.headfall.scenarios.accounts;

import java.util.OptionalDouble;
import org.headfall.scenarios.recording.WaterYear;

/**
 * What was taken in a water year.
 *
 * @param year the water year
 * @param of what the account is of: a bore, a holder, a zone, or all bores
 * @param name its name; empty for all bores
 * @param taken volume by the discharges of the run (m³), absent if the run has no part in the year
 * @param wholeYear whether the run lasts for all of the year
 * @param metered volume by meters (m³), absent unless readings of every bore reach over the year
 * @param entitlement what may be taken in a year (m³), absent unless it is known of every bore
 */
public record WaterAccount(
        WaterYear year,
        Of of,
        String name,
        OptionalDouble taken,
        boolean wholeYear,
        OptionalDouble metered,
        OptionalDouble entitlement) {

    /** What an account is of. */
    public enum Of {
        /** One bore. */
        BORE("bore"),
        /** All bores of a holder. */
        HOLDER("holder"),
        /** All bores of a zone. */
        ZONE("zone"),
        /** All bores. */
        ALL("all bores");

        private final String words;

        Of(String words) {
            this.words = words;
        }

        /** Words for tables. */
        public String words() {
            return words;
        }
    }

    /** What counts against the entitlement (m³): what meters show where they do, otherwise what the run takes. */
    public OptionalDouble counted() {
        return metered.isPresent() ? metered : taken;
    }

    /** What is left of the entitlement (m³), negative where more was taken; of a whole year only. */
    public OptionalDouble left() {
        return entitlement.isPresent() && counted().isPresent() && (wholeYear || metered.isPresent())
                ? OptionalDouble.of(entitlement.getAsDouble() - counted().getAsDouble())
                : OptionalDouble.empty();
    }
}

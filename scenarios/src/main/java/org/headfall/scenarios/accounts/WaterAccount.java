package org.headfall.scenarios.accounts;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.WaterYear;

/**
 * What some bores took in a water year, against what they may take. Of each bore the meter counts where its readings reach
 * over the year, otherwise what the run takes.
 *
 * @param year the water year
 * @param of what the account is of: a bore, a holder, a zone, or all bores
 * @param name its name; empty for all bores
 * @param bores the year of each bore, at least one
 */
public record WaterAccount(WaterYear year, Of of, String name, List<BoreYear> bores) {

    /** Copies the list. */
    public WaterAccount {
        bores = List.copyOf(bores);
        if (bores.isEmpty()) {
            throw new IllegalArgumentException("an account needs at least one bore");
        }
    }

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

    /** Volume by the discharges of the run (m³), absent if the run has no part in the year. */
    public OptionalDouble taken() {
        return sum(BoreYear::taken);
    }

    /** Volume by meters (m³), of the bores whose readings reach over the year; absent if there are none. */
    public OptionalDouble metered() {
        return sum(BoreYear::metered);
    }

    /** Number of bores whose readings reach over the year. */
    public int meteredBores() {
        return (int) bores.stream().filter(bore -> bore.metered().isPresent()).count();
    }

    /** Number of bores with a meter whose readings do not reach over the year. */
    public int boresWithTooFewReadings() {
        return (int) bores.stream()
                .filter(bore -> bore.hasMeter() && bore.metered().isEmpty())
                .count();
    }

    /** What may be taken in a year (m³), of the bores of which it is known; absent if there are none. */
    public OptionalDouble entitlement() {
        return sum(BoreYear::entitlement);
    }

    /** Number of bores with an entitlement. */
    public int entitledBores() {
        return (int)
                bores.stream().filter(bore -> bore.entitlement().isPresent()).count();
    }

    /** What counts against the entitlement (m³); absent where neither meter nor run says what a bore took. */
    public OptionalDouble counted() {
        return bores.stream().allMatch(bore -> bore.counted().isPresent())
                ? sum(BoreYear::counted)
                : OptionalDouble.empty();
    }

    /** Whether the run has a part of the year only, and that counts for a bore. */
    public boolean countsPartOfAYear() {
        return bores.stream().anyMatch(bore -> bore.counted().isPresent() && !bore.countsWholeYear());
    }

    /**
     * What is left of the entitlement (m³), negative where more was taken; absent unless the whole year of every bore
     * counts and bores without an entitlement took nothing.
     */
    public OptionalDouble left() {
        boolean comparable = bores.stream()
                .allMatch(bore -> bore.countsWholeYear()
                        && (bore.entitlement().isPresent() || bore.counted().orElse(0) <= 0));
        return comparable && entitlement().isPresent()
                ? OptionalDouble.of(entitlement().getAsDouble() - counted().orElseThrow())
                : OptionalDouble.empty();
    }

    private OptionalDouble sum(Function<BoreYear, OptionalDouble> value) {
        double[] known = bores.stream()
                .map(value)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        return known.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(DoubleStream.of(known).sum());
    }
}

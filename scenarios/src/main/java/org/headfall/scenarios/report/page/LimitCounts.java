package org.headfall.scenarios.report.page;

import java.util.List;
import java.util.function.Predicate;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.report.content.LimitOutcome;

/**
 * How many limits, and how many of the places they hold at, are kept, crossed, or neither for sure. A limit that holds at
 * several places is one limit; it is kept if it is kept at all of them.
 *
 * @param named limits
 * @param namedCrossed limits that are crossed at some place
 * @param namedHeld limits that are kept at all their places
 * @param places limits at places
 * @param placesCrossed of them, crossed
 * @param placesHeld of them, kept
 */
record LimitCounts(int named, int namedCrossed, int namedHeld, int places, int placesCrossed, int placesHeld) {

    static LimitCounts of(List<LimitOutcome> limits) {
        List<LimitOutcome> crossed = where(limits, limit -> limit.verdict() == Outcome.Kind.CROSSED);
        List<LimitOutcome> notHeld = where(limits, limit -> limit.verdict() != Outcome.Kind.HOLDS);
        return new LimitCounts(
                names(limits),
                names(crossed),
                names(limits) - names(notHeld),
                limits.size(),
                crossed.size(),
                limits.size() - notHeld.size());
    }

    private static List<LimitOutcome> where(List<LimitOutcome> limits, Predicate<LimitOutcome> condition) {
        return limits.stream().filter(condition).toList();
    }

    private static int names(List<LimitOutcome> limits) {
        return (int) limits.stream().map(LimitOutcome::name).distinct().count();
    }

    boolean allHold() {
        return placesHeld == places;
    }

    private int placesUnsure() {
        return places - placesHeld - placesCrossed;
    }

    private boolean severalPlaces() {
        return places > named;
    }

    /** That nothing is crossed, as a sentence. */
    String kept(String until) {
        if (allHold()) {
            return (named == 1 ? "The limit that was set is kept" : "All " + named + " limits are kept")
                    + (severalPlaces() ? " at all " + places + " places." : ".");
        }
        return namedHeld + " of " + Words.count(named, "limit is", "limits are") + " kept until " + until + "; "
                + (severalPlaces()
                        ? "at " + placesUnsure() + " of " + places + " places nothing sure can be said."
                        : "of the others nothing sure can be said.");
    }

    /** How many are crossed, as the beginning of a sentence that goes on with the first of them. */
    String crossed() {
        String where = severalPlaces() ? " at " + placesCrossed + " of " + places + " places" : "";
        String first = placesCrossed == 1 ? ": " : ", first ";
        if (named == 1) {
            return "The limit that was set is crossed" + where + first;
        }
        return (namedCrossed == 1 ? "One" : String.valueOf(namedCrossed)) + " of " + named
                + (namedCrossed == 1 ? " limits is" : " limits are") + " crossed" + where + first;
    }

    /** What became of the limits that are not crossed, so that all of them are counted; empty if there are none. */
    String besidesCrossed() {
        if (placesCrossed == places) {
            return "";
        }
        String unsure = placesUnsure() == 0
                ? "."
                : "; " + (severalPlaces() ? "at " : "of ") + placesUnsure() + " nothing sure can be said.";
        return severalPlaces()
                ? " Limits are kept at " + Words.count(placesHeld, "place", "places") + unsure
                : " " + Words.count(placesHeld, "limit is", "limits are") + " kept" + unsure;
    }

    /** Such as "22 of 29". */
    String keptOfAll() {
        return namedHeld + " of " + named;
    }

    /** What became of the others, to stand behind their number; empty if all are kept. */
    String detail() {
        String at = severalPlaces() ? " at " + Words.count(placesCrossed, "place", "places") : "";
        return (placesCrossed == 0 ? "" : "; " + namedCrossed + " crossed" + at)
                + (placesUnsure() == 0
                        ? ""
                        : "; "
                                + (severalPlaces()
                                        ? "at " + Words.count(placesUnsure(), "place", "places")
                                        : "of " + placesUnsure())
                                + " nothing sure can be said");
    }
}

package org.headfall.scenarios.report.content;

import java.util.List;

/**
 * What a reader needs to change the rates of bores and see the heads that follow, without the grid: responses to a unit
 * discharge, the discharges of the run, and the rules of what follows head. Causes are the bores and springs, the first
 * of the stations. Arrays are not copied and must not change.
 *
 * @param stations names of bores, then springs, then points
 * @param lags how long a unit discharge has lasted (d), positive, increasing, at least two
 * @param responses drawdown per discharge after each lag (d/m²): {@code [cause * stations + station][lag]}
 * @param days ends of the pieces of time (d since the start), increasing, one more than there are pieces
 * @param begin discharge of each cause where a piece begins (m³/d): {@code [cause][piece]}
 * @param end discharge of each cause where a piece ends, in which it runs straight (m³/d)
 * @param takers what each cause does
 * @param limits limits that can be judged again
 * @param notJudged the other limits
 */
@SuppressWarnings("ArrayRecordComponent") // large, owned by the content
public record WhatIf(
        List<String> stations,
        double[] lags,
        double[][] responses,
        double[] days,
        double[][] begin,
        double[][] end,
        List<Taker> takers,
        List<Condition> limits,
        List<NotJudged> notJudged) {

    /** Checks that there is a response for each pair and a discharge for each piece. */
    public WhatIf {
        stations = List.copyOf(stations);
        takers = List.copyOf(takers);
        limits = List.copyOf(limits);
        notJudged = List.copyOf(notJudged);
        require("responses", responses.length, takers.size() * stations.size());
        require("causes with discharges", begin.length, takers.size());
        require("causes with discharges", end.length, takers.size());
        for (int cause = 0; cause < begin.length; cause++) {
            require("pieces of discharge of " + stations.get(cause), begin[cause].length, days.length - 1);
            require("pieces of discharge of " + stations.get(cause), end[cause].length, days.length - 1);
        }
        for (double[] response : responses) {
            require("values of a response", response.length, lags.length);
        }
    }

    private static void require(String what, int found, int expected) {
        if (found != expected) {
            throw new IllegalArgumentException("expected " + expected + " " + what + ", found " + found);
        }
    }

    /**
     * A bore or spring.
     *
     * @param rule what its discharge follows
     * @param proposed whether it is a proposed bore
     * @param holder who holds it, blank if not said
     * @param lowestLevel water level in the bore at which pumping is cut back (m above datum) or NaN
     * @param loss loss of head per discharge and per discharge squared, between aquifer and outlet or pump
     * @param outlet head of the aquifer from which it flows by itself (m above datum) or NaN
     */
    public record Taker(Rule rule, boolean proposed, String holder, double lowestLevel, Loss loss, double outlet) {}

    /** What a discharge follows. */
    public enum Rule {
        /** A rate that is asked for; the reader may change it. */
        RATE,
        /** Head above the outlet: a spring or a free-flowing bore. */
        HEAD,
        /** A rule that the page does not know; its discharge stays that of the run. */
        OTHER
    }

    /**
     * Loss of head with discharge, {@code linear Q + quadratic Q²}.
     *
     * @param linear (d/m²)
     * @param quadratic (d²/m⁵)
     */
    public record Loss(double linear, double quadratic) {}

    /**
     * A limit at a station.
     *
     * @param limit place of the limit among those of the report
     * @param station place of the station
     * @param quantity what is limited
     * @param causes places of the causes that the run it is compared with leaves out; empty if there is no such run
     * @param reference what a drawdown is measured from where there is no other run
     * @param fromDay first day on which it counts (d since the start)
     * @param toDay last day on which it counts, perhaps after the end of the run
     * @param years time over which a decline is taken (yr), otherwise 0
     */
    public record Condition(
            int limit,
            int station,
            Limited quantity,
            List<Integer> causes,
            Reference reference,
            double fromDay,
            double toDay,
            int years) {

        /** Copies the list. */
        public Condition {
            causes = List.copyOf(causes);
        }
    }

    /**
     * Mean head over some days, or that of a day; earlier days than the last of them do not count.
     *
     * @param fromDay first day (d since the start)
     * @param toDay last day
     */
    public record Reference(double fromDay, double toDay) {}

    /**
     * A limit that only a run can judge.
     *
     * @param limit place of the limit among those of the report
     * @param reason why, as a sentence
     */
    public record NotJudged(int limit, String reason) {}

    /** What a limit limits. */
    public enum Limited {
        /** Drawdown at most. */
        DRAWDOWN,
        /** Head at least. */
        FLOOR_LEVEL,
        /** Fall of head over time at most. */
        DECLINE_RATE
    }
}

package org.headfall.scenarios.capping;

/**
 * What a place gains on a day because a bore has been shut since the start.
 *
 * @param station name of the place
 * @param kind what it is, in words
 * @param holder who holds the bore; empty if nobody is named
 * @param day the day (d since the start)
 * @param head rise of head (m)
 * @param discharge discharge gained (m³/d), NaN at places without any
 * @param flowsAgain whether water flows there by itself that would not flow otherwise
 */
public record Gain(
        String station, String kind, String holder, double day, double head, double discharge, boolean flowsAgain) {}

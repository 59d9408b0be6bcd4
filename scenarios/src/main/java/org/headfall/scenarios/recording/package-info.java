/**
 * What a run is about and what it recorded, in memory.
 *
 * <p>{@link org.headfall.scenarios.recording.RunDescription} holds everything that does not change while a run goes on:
 * title, datum, calendar, where the input came from, the aquifer on its grid, ground surface, and the stations.
 * A {@link org.headfall.scenarios.recording.Station station} is a place with a series of its own: a bore, a spring or
 * a protected point. Bores come first, then springs, then points; every array "per station" is in that order.
 *
 * <p>{@link org.headfall.scenarios.recording.Recorder} listens to a simulation and gathers a
 * {@link org.headfall.scenarios.recording.Recording}: one value a station and recorded day, the water balance of each
 * period between gridded records, the heads of the whole grid at the start, at the report dates and at the end, and
 * where the head fell below the aquifer top. It hands each record on to
 * {@link org.headfall.scenarios.recording.RecordSink sinks} (the files) as it comes.
 *
 * <p>Metres, days since the start of the period, and m³/d throughout. A value that does not exist (the level in the
 * bore of a spring) is NaN in arrays, and absent where a type says so.
 */
@NullMarked
package org.headfall.scenarios.recording;

import org.jspecify.annotations.NullMarked;

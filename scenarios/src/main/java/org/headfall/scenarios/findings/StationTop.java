package org.headfall.scenarios.findings;

import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;

/** Top of the aquifer under a station. */
final class StationTop {

    private StationTop() {}

    /** Aquifer top (m above datum): that of the bore's own log where it has one, else that of its cell. */
    static double of(RunDescription description, Station station) {
        if (station instanceof Station.BoreSite bore) {
            return bore.aquiferTop();
        }
        return description.aquifer().top()[description.grid().locate(station.x(), station.y())];
    }
}

package org.headfall.scenarios.recording;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Everything about a run that does not change while it goes on. Arrays are not copied and must not change.
 *
 * @param title title of the scenario
 * @param purpose what it is for, in the words of the document; empty if not given
 * @param datum the level that all levels and heads are above, such as "national height datum"
 * @param mapReference coordinate reference system of x and y; absent for a local grid
 * @param calendar calendar of the run
 * @param endDay last day of the run (d since the start)
 * @param provenance where the run came from
 * @param aquifer the aquifer on its grid
 * @param sealingBed the bed above it, if it leaks
 * @param ground level of the ground of each cell (m above datum)
 * @param stations bores in the order of the flow problem, then its springs, then protected points
 * @param reportDates dates for which tables and maps are made, in order of time
 * @param measurements measured heads, each of a day of the run
 * @param assumptions what was assumed, clipped or out of range when the input was read, one sentence each
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record RunDescription(
        String title,
        String purpose,
        String datum,
        Optional<MapReference> mapReference,
        RunCalendar calendar,
        double endDay,
        Provenance provenance,
        Aquifer aquifer,
        Optional<SealingBed> sealingBed,
        double[] ground,
        List<Station> stations,
        List<ReportDate> reportDates,
        List<Measurement> measurements,
        List<String> assumptions) {

    /** Copies the lists and checks the shape of the ground and the order of the report dates. */
    public RunDescription {
        stations = List.copyOf(stations);
        reportDates = List.copyOf(reportDates);
        measurements = List.copyOf(measurements);
        assumptions = List.copyOf(assumptions);
        if (ground.length != aquifer.grid().cellCount()) {
            throw new IllegalArgumentException("ground of " + ground.length + " values does not fit "
                    + aquifer.grid().cellCount() + " cells");
        }
        for (int i = 1; i < reportDates.size(); i++) {
            if (reportDates.get(i).day() <= reportDates.get(i - 1).day()) {
                throw new IllegalArgumentException("report dates must follow each other, found "
                        + reportDates.get(i).label() + " after "
                        + reportDates.get(i - 1).label());
            }
        }
    }

    /** The same run with other stations. */
    public RunDescription withStations(List<Station> others) {
        return new RunDescription(
                title,
                purpose,
                datum,
                mapReference,
                calendar,
                endDay,
                provenance,
                aquifer,
                sealingBed,
                ground,
                others,
                reportDates,
                measurements,
                assumptions);
    }

    /** The grid. */
    public RectilinearGrid grid() {
        return aquifer.grid();
    }

    /** Stations that are bores, in their order. */
    public List<Station.BoreSite> bores() {
        return stationsOf(Station.BoreSite.class);
    }

    /** Stations that are springs, in their order. */
    public List<Station.SpringSite> springs() {
        return stationsOf(Station.SpringSite.class);
    }

    /** Stations that are protected points, in their order. */
    public List<Station.ProtectedPoint> points() {
        return stationsOf(Station.ProtectedPoint.class);
    }

    /** Position of a station in the order of all stations, or -1 if no station has this name. */
    public int stationIndex(String name) {
        return IntStream.range(0, stations.size())
                .filter(i -> stations.get(i).name().equals(name))
                .findFirst()
                .orElse(-1);
    }

    private <T extends Station> List<T> stationsOf(Class<T> kind) {
        return stations.stream().filter(kind::isInstance).map(kind::cast).toList();
    }
}

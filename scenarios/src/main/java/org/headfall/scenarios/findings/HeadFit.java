package org.headfall.scenarios.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;

/**
 * How computed heads meet measured ones (Anderson, Woessner and Hunt 2015, Applied Groundwater Modeling, chapter 9; from
 * memory). An error is computed less measured.
 *
 * @param count how many measured heads there are
 * @param mean mean error (m)
 * @param meanAbsolute mean of the errors' sizes (m)
 * @param rootMeanSquare root of the mean square error (m)
 * @param range highest less lowest measured head (m)
 * @param worst largest error by size (m)
 * @param worstStation its station
 * @param worstDay its day (d since the start)
 * @param firstDay day of the first measured head
 * @param lastDay day of the last one
 */
public record HeadFit(
        int count,
        double mean,
        double meanAbsolute,
        double rootMeanSquare,
        double range,
        double worst,
        String worstStation,
        double worstDay,
        double firstDay,
        double lastDay) {

    /** A measured head and how far the computed one is off (m). */
    private record Miss(Measurement measured, double error) {}

    /**
     * Fit of a run.
     *
     * @param description the run with its measured heads
     * @param recording what it recorded
     * @return the fit; absent without measured heads where there are computed ones
     */
    public static Optional<HeadFit> of(RunDescription description, Recording recording) {
        List<Miss> misses = misses(description, recording, description.measurements());
        return misses.isEmpty() ? Optional.empty() : Optional.of(of(misses));
    }

    /**
     * Fit at one station.
     *
     * @param description the run with its measured heads
     * @param recording what it recorded
     * @param station name of the station
     * @return the fit; absent without measured heads there
     */
    public static Optional<HeadFit> at(RunDescription description, Recording recording, String station) {
        List<Measurement> there = description.measurements().stream()
                .filter(measurement -> measurement.station().equals(station))
                .toList();
        List<Miss> misses = misses(description, recording, there);
        return misses.isEmpty() ? Optional.empty() : Optional.of(of(misses));
    }

    private static List<Miss> misses(RunDescription description, Recording recording, List<Measurement> measured) {
        List<Miss> misses = new ArrayList<>();
        for (Measurement measurement : measured) {
            int station = description.stationIndex(measurement.station());
            double computed = recording.series().get(station).headAt(measurement.day());
            double error = computed - measurement.head();
            if (Double.isFinite(error)) {
                misses.add(new Miss(measurement, error));
            }
        }
        return misses;
    }

    private static HeadFit of(List<Miss> misses) {
        double sum = 0;
        double absolute = 0;
        double square = 0;
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        Miss worst = misses.get(0);
        for (Miss miss : misses) {
            sum += miss.error();
            absolute += Math.abs(miss.error());
            square += miss.error() * miss.error();
            highest = Math.max(highest, miss.measured().head());
            lowest = Math.min(lowest, miss.measured().head());
            first = Math.min(first, miss.measured().day());
            last = Math.max(last, miss.measured().day());
            worst = Math.abs(miss.error()) > Math.abs(worst.error()) ? miss : worst;
        }
        int count = misses.size();
        return new HeadFit(
                count,
                sum / count,
                absolute / count,
                Math.sqrt(square / count),
                highest - lowest,
                worst.error(),
                worst.measured().station(),
                worst.measured().day(),
                first,
                last);
    }

    /** Standard deviation of the errors around their mean (m), of a sample; infinite for a single one. */
    public double deviation() {
        double square = Math.max(0, rootMeanSquare * rootMeanSquare - mean * mean);
        return count > 1 ? Math.sqrt(square * count / (count - 1)) : Double.POSITIVE_INFINITY;
    }

    /** Root mean square error over the measured range (-); infinite where all measured heads are the same. */
    public double overRange() {
        return range > 0 ? rootMeanSquare / range : Double.POSITIVE_INFINITY;
    }
}

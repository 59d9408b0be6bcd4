package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.flow.SourceReadings;

/**
 * Responses to a few sources at all places where these were read, over time. Each source has a model of its own ({@link
 * ReducedModel}), made of its solutions at the shifts; at a place the model is read as the solutions are read there, which
 * errs in first order where it is not the source's own.
 */
final class SourceResponses {

    /** Share below which directions of the space are dropped: less than for models that are of second order. */
    private static final double SMALLEST_DIRECTION = 1e-13;

    private final SourceReadings readings;
    private final double[] times;
    private final double[][][] values;
    private final double[][][] rates;

    /**
     * Responses from some of the shifts.
     *
     * @param readings the readings
     * @param every 1 for models of all shifts, 2 for models of every second one
     * @param times times since a source began (d), increasing
     */
    SourceResponses(SourceReadings readings, int every, double[] times) {
        this.readings = readings;
        this.times = times;
        values = new double[readings.sources()][readings.places()][times.length];
        rates = new double[readings.sources()][readings.places()][times.length];
        for (int source = 0; source < readings.sources(); source++) {
            double[] falls = some(readings.falls(source), every);
            RelaxingModes modes = new ReducedModel(
                            some(readings.shifts(), every), some(readings.own(source), every), falls, falls)
                    .modes(SMALLEST_DIRECTION);
            for (int place = 0; place < readings.places(); place++) {
                StepResponse response = modes.readBy(some(readings.at(place, source), every));
                double atOnce = readings.atOnce(place, source);
                Arrays.setAll(values[source][place], i -> atOnce + response.value(times[i]));
                Arrays.setAll(rates[source][place], i -> response.rate(times[i]));
            }
        }
    }

    private static double[] some(double[] all, int every) {
        return IntStream.range(0, all.length)
                .filter(i -> i % every == 0)
                .mapToDouble(i -> all[i])
                .toArray();
    }

    /**
     * Responses as a table.
     *
     * @param sources sources that are its causes
     * @param places places that are its receptors
     */
    ResponseTable table(int[] sources, int[] places) {
        double[] atOnce = new double[sources.length * places.length];
        double[][] value = new double[times.length][atOnce.length];
        double[][] rate = new double[times.length][atOnce.length];
        for (int i = 0; i < sources.length; i++) {
            for (int j = 0; j < places.length; j++) {
                int curve = i * places.length + j;
                atOnce[curve] = readings.atOnce(places[j], sources[i]);
                for (int k = 0; k < times.length; k++) {
                    value[k][curve] = values[sources[i]][places[j]][k];
                    rate[k][curve] = rates[sources[i]][places[j]][k];
                }
            }
        }
        return new ResponseTable(places.length, times, atOnce, value, rate);
    }

    /** Largest difference to others of the same sources at any place from a time on (d/m²). */
    double largestDifference(SourceResponses other, int source, double from) {
        double largest = 0;
        for (int place = 0; place < readings.places(); place++) {
            for (int k = 0; k < times.length; k++) {
                double difference = Math.abs(values[source][place][k] - other.values[source][place][k]);
                largest = times[k] >= from ? Math.max(largest, difference) : largest;
            }
        }
        return largest;
    }
}

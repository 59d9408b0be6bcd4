package org.headfall.scenarios.sweep.page;

import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.sweep.statistics.Ranks;

/**
 * Quantiles of runs at each place along a chart: half of the runs lie below the middle, a tenth below the lower edge, a tenth
 * above the upper.
 *
 * @param low the value below which {@link #TAIL} of the runs lie, at each place
 * @param middle the median at each place
 * @param high the value above which {@link #TAIL} of the runs lie, at each place
 */
@SuppressWarnings("ArrayRecordComponent") // drawn once, never compared
record Bands(double[] low, double[] middle, double[] high) {

    /** Share of the runs on either side of the band. */
    static final double TAIL = 0.1;

    /**
     * The bands of samples.
     *
     * @param samples values of the runs, one array a place
     */
    static Bands of(List<double[]> samples) {
        return new Bands(quantiles(samples, TAIL), quantiles(samples, 0.5), quantiles(samples, 1 - TAIL));
    }

    /** {@return the edges at all places} */
    DoubleStream edges() {
        return DoubleStream.concat(DoubleStream.of(low), DoubleStream.of(high));
    }

    private static double[] quantiles(List<double[]> samples, double share) {
        return samples.stream()
                .mapToDouble(values -> Ranks.quantile(values, share))
                .toArray();
    }
}

package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.PointRules;
import org.headfall.solver.flow.RateHistory;

/**
 * Splits what a run did to heads, springs and flowing bores by the bores whose rates did it. Other than in
 * {@link Interference}, a spring or bore that gives less because head fell is no cause but part of the effect: what it
 * gives less is split as well, and so is what that in turn does to heads.
 *
 * <p>A point that follows head gives {@code dq = dh / c} less or more, c being the chord of its rule between its discharge at
 * the start and now. With chords the equations are linear in the causes, so the parts add up to the whole whatever the rule;
 * where the rule is straight, as that of a spring that flows, each part is what the run would show with this cause alone.
 * A point that has stopped keeps the shares with which it stopped. What boundaries, recharge and a start that was not at rest
 * do, stands apart, with what springs and flowing bores give less for it. What is left over is not linear (what points that
 * follow head give beyond their chords within steps, or less because their rule has changed), or the error of the numbers. A
 * pump at its lowest level counts as its own doing.
 */
public final class Attribution {

    private final RateHistory history;
    private final int bores;
    private final double[] years;
    private final AttributedChanges ofBores;
    private final AttributedChanges ofSeasons;

    /**
     * Attribution of a run.
     *
     * @param problem the problem that was run
     * @param responses its responses
     * @param history discharges and heads of the run
     * @param startRates discharge of each bore and spring in the state the run started from (m³/d)
     * @param fromRest whether heads at the start are the steady ones of these discharges; otherwise they are given
     * @param years days on which a year begins, from 0 to at least the end of the run: over them seasons are told
     */
    public Attribution(
            FlowProblem problem,
            StationResponses responses,
            RateHistory history,
            double[] startRates,
            boolean fromRest,
            double[] years) {
        this.history = history;
        this.years = years.clone();
        bores = problem.bores().size();
        AttributedChanges.Run run = new AttributedChanges.Run(
                new PointRules(problem),
                responses.responses().modes(),
                history,
                startRates.clone(),
                bores,
                new Drift(
                        responses.responses().modes(),
                        responses.undisturbed(),
                        fromRest ? new double[startRates.length] : startRates));
        double[][] yearlyMean = yearlyMeans();
        ofBores = new AttributedChanges(run, (step, bore, discharge) -> discharge - startRates[bore]);
        ofSeasons = new AttributedChanges(run, (step, bore, discharge) -> discharge - yearlyMean[year(step)][bore]);
    }

    /**
     * The split on a day.
     *
     * @param day the day (d)
     * @param drawdown drawdown since the start (m): {@code [receptor][bore]}
     * @param seasonalDrawdown part of it by what a bore takes beyond its mean of the year (m): {@code [receptor][bore]}
     * @param loss discharge less than at the start (m³/d): {@code [bore or spring][bore]}; of a bore that does not follow
     *     head its own doing, negative if it takes more
     * @param seasonalLoss part of it by what a bore takes beyond its mean of the year (m³/d): {@code [bore or spring][bore]}
     * @param driftDrawdown drawdown at each receptor by boundaries, recharge and a start that was not at rest (m)
     * @param driftLoss discharge less by these, of each bore or spring (m³/d)
     * @param followed whether a bore or spring gives less or more because of its head
     */
    @SuppressWarnings("ArrayRecordComponent") // matrices for tables, never compared
    public record Split(
            double day,
            double[][] drawdown,
            double[][] seasonalDrawdown,
            double[][] loss,
            double[][] seasonalLoss,
            double[] driftDrawdown,
            double[] driftLoss,
            boolean[] followed) {}

    /**
     * Splits, bores and their seasons side by side.
     *
     * @param days days on which steps of the run end, increasing
     * @return a split a day
     * @throws IllegalArgumentException if no step ends on a day
     */
    public Split[] on(double[] days) {
        List<AttributedChanges.OnDay[]> found = IntStream.range(0, 2)
                .parallel()
                .mapToObj(part -> (part == 0 ? ofBores : ofSeasons).on(days))
                .toList();
        Split[] splits = new Split[days.length];
        Arrays.setAll(splits, k -> {
            AttributedChanges.OnDay whole = found.get(0)[k];
            AttributedChanges.OnDay seasonal = found.get(1)[k];
            return new Split(
                    days[k],
                    whole.drawdown(),
                    seasonal.drawdown(),
                    whole.loss(),
                    seasonal.loss(),
                    whole.driftDrawdown(),
                    whole.driftLoss(),
                    whole.followed());
        });
        return splits;
    }

    /** Mean discharge of each bore in each year (m³/d). */
    private double[][] yearlyMeans() {
        double[][] means = new double[years.length][bores];
        double[] lengths = new double[years.length];
        for (int step = 0; step < history.steps(); step++) {
            double length = history.startOf(step + 1) - history.startOf(step);
            lengths[year(step)] += length;
            for (int bore = 0; bore < bores; bore++) {
                means[year(step)][bore] += length * history.rate(step, bore);
            }
        }
        for (int year = 0; year < means.length; year++) {
            for (int bore = 0; bore < bores && lengths[year] > 0; bore++) {
                means[year][bore] /= lengths[year];
            }
        }
        return means;
    }

    /** The year in which the middle of a step lies. */
    private int year(int step) {
        double middle = 0.5 * (history.startOf(step) + history.startOf(step + 1));
        int found = Arrays.binarySearch(years, middle);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }
}

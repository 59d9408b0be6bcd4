package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
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
 * A point that has stopped keeps the shares with which it stopped. What no bore explains, boundaries, recharge, a start that
 * was not at rest and the error of the numbers, is left over. A pump at its lowest level counts as its own doing.
 */
public final class Attribution {

    private final FlowProblem problem;
    private final PointRules rules;
    private final RateHistory history;
    private final double[] startRates;
    private final int bores;
    private final int points;
    private final int receptors;
    private final Superposition[] byCause;
    private final double[] years;
    private final double[][] yearlyMean;

    /** What each cause has changed of the discharge of each point, {@code [cause][point]} (m³/d). */
    private double[][] changes;

    /**
     * Attribution of a run.
     *
     * @param problem the problem that was run
     * @param responses its responses
     * @param history discharges and heads of the run
     * @param startRates discharge of each bore and spring in the state the run started from (m³/d)
     * @param years days on which a year begins, from 0 to at least the end of the run: over them seasons are told
     */
    public Attribution(
            FlowProblem problem, UnitResponses responses, RateHistory history, double[] startRates, double[] years) {
        this.problem = problem;
        this.history = history;
        this.startRates = startRates.clone();
        this.years = years.clone();
        rules = new PointRules(problem);
        bores = problem.bores().size();
        points = history.points();
        receptors = responses.receptors();
        StepFactors factors = new StepFactors(responses.modes());
        // Every bore, then the season of every bore.
        byCause = IntStream.range(0, 2 * bores)
                .mapToObj(cause -> new Superposition(factors))
                .toArray(Superposition[]::new);
        changes = new double[byCause.length][points];
        yearlyMean = yearlyMeans();
    }

    /**
     * The split on a day.
     *
     * @param day the day (d)
     * @param drawdown drawdown since the start (m): {@code [receptor][bore]}
     * @param seasonalDrawdown part of it by what a bore takes beyond its mean of the year (m): {@code [receptor][bore]}
     * @param loss discharge less than at the start (m³/d): {@code [bore or spring][bore]}; of a bore that does not follow
     *     head its own doing, negative if it takes more
     * @param followed whether a bore or spring gives less or more because of its head
     */
    @SuppressWarnings("ArrayRecordComponent") // matrices for tables, never compared
    public record Split(
            double day, double[][] drawdown, double[][] seasonalDrawdown, double[][] loss, boolean[] followed) {}

    /**
     * Splits.
     *
     * @param days days on which steps of the run end, increasing
     * @return a split a day
     * @throws IllegalArgumentException if no step ends on a day
     */
    public Split[] on(double[] days) {
        Split[] splits = new Split[days.length];
        int next = 0;
        for (int step = 0; step < history.steps() && next < days.length; step++) {
            PointRules.Part[] parts = advance(step);
            if (history.startOf(step + 1) == days[next]) {
                splits[next] = read(days[next], parts);
                next++;
            }
        }
        if (next < days.length) {
            throw new IllegalArgumentException("no step of the run ends on day " + days[next]);
        }
        return splits;
    }

    private PointRules.Part[] advance(int step) {
        double end = history.startOf(step + 1);
        double length = end - history.startOf(step);
        double moment = Math.nextDown(end);
        boolean anew = history.startsAnew(step);
        double[] discharge = new double[points];
        Arrays.setAll(discharge, i -> history.straightenedRateAtEnd(step, i));
        PointRules.Part[] parts = rules.parts(moment, discharge, startRates);
        int[] following = IntStream.range(0, points)
                .filter(i -> parts[i] == PointRules.Part.FOLLOWS)
                .toArray();
        double[] chords = Arrays.stream(following)
                .mapToDouble(i -> rules.chord(moment, i, startRates[i], discharge[i]))
                .toArray();
        double[][] former = changes;
        changes = new double[byCause.length][];
        double[] stopped = shareOfStopped(former, parts, discharge);
        for (int cause = 0; cause < byCause.length; cause++) {
            changes[cause] = known(cause, step, parts, discharge, former[cause], stopped);
        }
        int[] causes = IntStream.range(0, byCause.length)
                .filter(cause -> byCause[cause].hasTaken() || isAny(changes[cause]))
                .toArray();
        for (int cause : causes) {
            byCause[cause].lookAhead(length, anew ? changes[cause].clone() : former[cause], changes[cause]);
        }
        if (following.length > 0 && causes.length > 0) {
            follow(causes, following, chords, anew);
        }
        for (int cause : causes) {
            byCause[cause].accept();
        }
        return parts;
    }

    private static boolean isAny(double[] values) {
        return Arrays.stream(values).anyMatch(value -> value != 0);
    }

    /**
     * What the points that follow head give less or more by each cause: {@code (chord + K) x = -s - chord q}, with what is
     * missing for head and discharge to agree on the right and one column a cause.
     */
    private void follow(int[] causes, int[] following, double[] chords, boolean anew) {
        DMatrixRMaj right = new DMatrixRMaj(following.length, causes.length);
        for (int i = 0; i < following.length; i++) {
            for (int k = 0; k < causes.length; k++) {
                double known = changes[causes[k]][following[i]];
                right.set(i, k, -byCause[causes[k]].drawdown(following[i]) - chords[i] * known);
            }
        }
        DMatrixRMaj further = new DMatrixRMaj(following.length, causes.length);
        solver(byCause[causes[0]], following, chords, anew).solve(right, further);
        for (int i = 0; i < following.length; i++) {
            for (int k = 0; k < causes.length; k++) {
                changes[causes[k]][following[i]] += further.get(i, k);
                byCause[causes[k]].addToLook(following[i], further.get(i, k), anew);
            }
        }
    }

    /** Changes by a cause at the end of a step; of points that follow head those before, to be put right. */
    private double[] known(
            int cause, int step, PointRules.Part[] parts, double[] discharge, double[] former, double[] stopped) {
        double[] known = new double[points];
        for (int i = 0; i < points; i++) {
            switch (parts[i]) {
                case FOLLOWS -> known[i] = former[i];
                case STOPPED -> known[i] = former[i] * stopped[i];
                case GIVEN -> {
                    if (cause == i) {
                        known[i] = discharge[i] - startRates[i];
                    } else if (cause == bores + i && i < bores) {
                        known[i] = discharge[i] - yearlyMean[year(step)][i];
                    }
                }
            }
        }
        return known;
    }

    /** Factor by which the changes of a stopped point grow so that those by all bores keep their share of the whole. */
    private double[] shareOfStopped(double[][] former, PointRules.Part[] parts, double[] discharge) {
        double[] factors = new double[points];
        for (int i = 0; i < points; i++) {
            double whole = discharge[i] - startRates[i];
            double explained = 0;
            for (int cause = 0; cause < bores; cause++) {
                explained += former[cause][i];
            }
            boolean exceeds = parts[i] == PointRules.Part.STOPPED && explained < whole;
            factors[i] = exceeds ? whole / explained : 1;
        }
        return factors;
    }

    private static LinearSolverDense<DMatrixRMaj> solver(
            Superposition superposition, int[] following, double[] chords, boolean anew) {
        int n = following.length;
        DMatrixRMaj matrix = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix.set(i, j, superposition.onset(following[i], following[j], anew));
            }
            matrix.add(i, i, chords[i]);
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        if (!solver.setA(matrix)) {
            throw new IllegalStateException("bores or springs stand so that their effects cannot be told apart");
        }
        return solver;
    }

    private Split read(double day, PointRules.Part[] parts) {
        double[][] drawdown = new double[receptors][bores];
        double[][] seasonal = new double[receptors][bores];
        double[][] loss = new double[points][bores];
        boolean[] followed = new boolean[points];
        for (int cause = 0; cause < bores; cause++) {
            for (int receptor = 0; receptor < receptors; receptor++) {
                drawdown[receptor][cause] = byCause[cause].drawdown(receptor);
                seasonal[receptor][cause] = byCause[bores + cause].drawdown(receptor);
            }
            for (int i = 0; i < points; i++) {
                loss[i][cause] = -changes[cause][i];
            }
        }
        for (int i = 0; i < points; i++) {
            followed[i] = parts[i] != PointRules.Part.GIVEN;
        }
        return new Split(day, drawdown, seasonal, loss, followed);
    }

    /** Mean discharge of each bore in each year (m³/d). */
    private double[][] yearlyMeans() {
        double[][] means = new double[years.length][problem.bores().size()];
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

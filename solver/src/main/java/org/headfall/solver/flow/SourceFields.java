package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.jspecify.annotations.Nullable;

/**
 * What a unit impulse of each source does to all cells, in Laplace space at some shifts: the solutions themselves, in single
 * precision if the memory allowed holds all of them, and what they mean for each part of the water balance. Sources are the
 * bores, the springs, then whatever else moves heads ({@link ChangingSource}). Drawdown of all cells is a weighted sum of the
 * solutions. If they were not kept they are solved for again when it is asked for, in the same way: the sums are the same bit
 * for bit, however much memory there is.
 */
public final class SourceFields {

    /** Sources summed up, and solved for again, side by side. */
    private static final int GROUP = 6;

    /** Part of the values of solutions that counts, roughly: fast shifts reach only a part of the cells. */
    private static final double SHARE_THAT_COUNTS = 0.6;

    private final FlowProblem problem;
    private final double[] shifts;
    private final int causes;
    private final double[] sumOfShares;
    private final List<ChangingSource> others;
    private final BalanceParts balance;
    private WindowedField @Nullable [][] kept;
    private final float[][] keptContent;
    private final double[][][] parts;
    private final double[] evenParts;
    private final double[] even;
    private long bytesLeft;
    private long solves;
    private long iterations;

    /**
     * Fields of a problem, to be filled by {@link TransferValues}.
     *
     * @param problem the problem
     * @param others what moves heads besides bores and springs
     * @param shifts values of the Laplace variable (1/d)
     * @param startHead head of each cell at the start (m above datum), by which balances tell inflow from outflow
     * @param bytes memory that solutions may take
     */
    public SourceFields(
            FlowProblem problem, List<ChangingSource> others, double[] shifts, double[] startHead, long bytes) {
        this.problem = problem;
        this.others = List.copyOf(others);
        this.shifts = shifts.clone();
        bytesLeft = bytes;
        causes = problem.bores().size() + problem.springs().size();
        sumOfShares = new double[causes + others.size()];
        Arrays.fill(sumOfShares, 0, causes, 1);
        for (int i = 0; i < others.size(); i++) {
            sumOfShares[causes + i] =
                    Arrays.stream(others.get(i).shares().weights()).sum();
        }
        long expected =
                (long) (SHARE_THAT_COUNTS * Float.BYTES * startHead.length * shifts.length * sumOfShares.length);
        kept = expected > bytes ? null : new WindowedField[shifts.length][sumOfShares.length];
        keptContent = new float[shifts.length][0];
        parts = new double[shifts.length][sumOfShares.length][];
        balance = new BalanceParts(new FlowEquation(problem), BedRelaxation.of(problem), startHead);
        even = new double[startHead.length];
        boolean[] active = problem.aquifer().active();
        Arrays.setAll(even, cell -> active[cell] ? 1 : 0);
        try (WorkerTeam alone = new WorkerTeam(1)) {
            CellLoops loops = new CellLoops(alone, even.length);
            balance.prepare(0, loops);
            evenParts = balance.of(even, loops);
        }
    }

    /** Takes the solutions at a shift; sources other than bores and springs follow from a place on. */
    void take(int shift, ShiftedSolves solves, int firstOther) {
        balance.prepare(shifts[shift], solves.loops());
        this.solves = solves.solves();
        iterations = solves.iterations();
        int[] places = IntStream.range(0, sources())
                .map(source -> source < causes ? source : firstOther + source - causes)
                .toArray();
        for (int source = 0; source < sources(); source++) {
            parts[shift][source] = balance.of(solves.drawdown(places[source]), solves.loops());
        }
        WindowedField[][] all = kept;
        if (all != null) {
            solves.forSources(
                    sources(),
                    source -> all[shift][source] =
                            WindowedField.of(solves.window(places[source]), solves.drawdown(places[source])));
            for (WindowedField one : all[shift]) {
                bytesLeft -= one.bytes();
            }
        }
        if (bytesLeft < 0) {
            kept = null;
        }
    }

    /** Number of cells. */
    int cells() {
        return even.length;
    }

    /** Number of sources. */
    public int sources() {
        return sumOfShares.length;
    }

    /** Number of bores and springs, which come first among the sources. */
    public int causes() {
        return causes;
    }

    /** The other sources. */
    public List<ChangingSource> others() {
        return others;
    }

    /** Sum of the shares of a source (-): one for bores and springs. */
    public double sumOfShares(int source) {
        return sumOfShares[source];
    }

    /** What aquifer and bed hold less in the solution at each shift (d): the inverse of the shift where nothing passes. */
    public double[] released(int source) {
        return IntStream.range(0, shifts.length)
                .mapToDouble(a -> parts[a][source][BalanceParts.STORAGE] + parts[a][source][BalanceParts.BED])
                .toArray();
    }

    /** What passes through ties to given heads in the solution at each shift (-). */
    public double[] passed(int source) {
        return IntStream.range(0, shifts.length)
                .mapToDouble(a -> flows(parts[a][source]))
                .toArray();
    }

    /** What aquifer and bed release by an even fall of all heads, per metre (m²). */
    public double releasedByEvenFall() {
        return evenParts[BalanceParts.STORAGE] + evenParts[BalanceParts.BED];
    }

    /** What an even fall of all heads lets in through ties to given heads, per metre (m²/d). */
    public double passedByEvenFall() {
        return flows(evenParts);
    }

    /** An even fall of all heads of the aquifer by one metre; not to be changed. */
    public double[] evenField() {
        return even;
    }

    private double flows(double[] all) {
        return Arrays.stream(all, BalanceParts.FIRST_FLOW, balance.count()).sum();
    }

    /** Linear systems solved, points included. */
    public long solves() {
        return solves;
    }

    /** Iterations of the linear solver in all. */
    public long iterations() {
        return iterations;
    }

    /** Whether all solutions were kept, so that fields need no further solves. */
    public boolean areKept() {
        return kept != null;
    }

    BalanceParts balance() {
        return balance;
    }

    FlowProblem problem() {
        return problem;
    }

    /**
     * Parts of the water balance of a sum of solutions.
     *
     * @param weights {@code [source][shift]} weight of each solution, and of an even fall after them
     * @return value of each part
     */
    double[] partsOf(double[][] weights) {
        double[] sums = new double[balance.count()];
        for (int source = 0; source < sources(); source++) {
            for (int a = 0; a < shifts.length; a++) {
                addTo(sums, weights[source][a], parts[a][source]);
            }
            addTo(sums, weights[source][shifts.length], evenParts);
        }
        return sums;
    }

    private static void addTo(double[] sums, double weight, double[] values) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += weight * values[i];
        }
    }

    /**
     * Sums of solutions as fields.
     *
     * @param weights {@code [field][source][shift]}, as for one field in the balance
     * @param team threads
     * @return the fields
     */
    FieldSums sums(double[][][] weights, WorkerTeam team) {
        FieldSums sums = new FieldSums(problem, weights.length, team);
        if (kept == null) {
            addAgain(weights, team, sums);
        } else {
            addKept(weights, sums);
        }
        double[] evenFalls = Arrays.stream(weights)
                .mapToDouble(field -> Arrays.stream(field)
                        .mapToDouble(ofSource -> ofSource[shifts.length])
                        .sum())
                .toArray();
        balance.prepare(0, sums.loops());
        sums.addEvenFalls(evenFalls, balance.bedContent());
        return sums;
    }

    /**
     * A sum of solutions in some cells.
     *
     * @param weights {@code [source][shift]} weight of each solution, and of an even fall after them
     * @param cells the cells
     * @return value of each of these cells
     * @throws IllegalStateException if solutions were not kept
     */
    public double[] sumIn(double[][] weights, int[] cells) {
        WindowedField[][] solutions = kept;
        if (solutions == null) {
            throw new IllegalStateException("there was no memory to keep solutions");
        }
        int columns = problem.aquifer().grid().columns();
        double[] sums = new double[cells.length];
        for (int source = 0; source < sources(); source++) {
            for (int i = 0; i < cells.length; i++) {
                sums[i] += weights[source][shifts.length] * even[cells[i]];
                for (int a = 0; a < shifts.length; a++) {
                    sums[i] += weights[source][a] * solutions[a][source].at(cells[i] / columns, cells[i] % columns);
                }
            }
        }
        return sums;
    }

    private void addKept(double[][][] weights, FieldSums sums) {
        WindowedField[][] solutions = Objects.requireNonNull(kept);
        List<FieldSums.Layer> layers = new ArrayList<>();
        for (int first = 0; first < sources(); first += GROUP) {
            int end = Math.min(sources(), first + GROUP);
            for (int a = 0; a < shifts.length; a++) {
                layers.add(new FieldSums.Layer(
                        Arrays.copyOfRange(solutions[a], first, end),
                        weightsAt(weights, first, end, a),
                        content(a, sums.loops())));
            }
        }
        sums.add(layers);
    }

    /** Group by group, so that few solutions are held at a time. */
    private void addAgain(double[][][] weights, WorkerTeam team, FieldSums sums) {
        for (int first = 0; first < sources(); first += GROUP) {
            int end = Math.min(sources(), first + GROUP);
            ShiftedSolves again = new ShiftedSolves(problem, allShares().subList(first, end), team);
            for (int a = 0; a < shifts.length; a++) {
                again.solve(shifts[a]);
                WindowedField[] solutions = IntStream.range(0, end - first)
                        .mapToObj(i -> WindowedField.of(again.window(i), again.drawdown(i)))
                        .toArray(WindowedField[]::new);
                sums.add(List.of(
                        new FieldSums.Layer(solutions, weightsAt(weights, first, end, a), content(a, sums.loops()))));
            }
        }
    }

    /** What the bed releases over each cell per metre of drawdown at a shift (m²), kept if solutions are; none without one. */
    private float[] content(int shift, CellLoops loops) {
        float[] known = keptContent[shift];
        if (known.length > 0 || !balance.hasBed()) {
            return known;
        }
        float[] content = new float[even.length];
        balance.prepare(shifts[shift], loops);
        double[] exact = balance.bedContent();
        for (int cell = 0; cell < content.length; cell++) {
            content[cell] = (float) exact[cell];
        }
        if (kept != null) {
            keptContent[shift] = content;
        }
        return content;
    }

    private static float[][] weightsAt(double[][][] weights, int first, int end, int shift) {
        float[][] some = new float[weights.length][end - first];
        for (int field = 0; field < some.length; field++) {
            for (int source = first; source < end; source++) {
                some[field][source - first] = (float) weights[field][source][shift];
            }
        }
        return some;
    }

    private List<CellWeights> allShares() {
        PointDischarges points = new PointDischarges(problem);
        List<CellWeights> all = new ArrayList<>();
        for (int i = 0; i < causes; i++) {
            all.add(points.weights(i));
        }
        others.forEach(other -> all.add(other.shares()));
        return all;
    }
}

package org.headfall.solver.flow;

import java.nio.FloatBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;

/**
 * What a unit impulse of each source does to all cells, in Laplace space at some shifts: the solutions themselves, in single
 * precision, and what they mean for each part of the water balance. Sources are the bores, the springs, then whatever else
 * moves heads ({@link ChangingSource}). Drawdown of all cells is a weighted sum of the solutions.
 */
public final class SourceFields {

    /** Sources summed up side by side. */
    private static final int GROUP = 6;

    private final FlowProblem problem;
    private final SolutionMemory memory;
    private final int causes;
    private final double[] sumOfShares;
    private final List<ChangingSource> others;
    private final BalanceParts balance;
    private final List<AtShift> shifts = new ArrayList<>();
    private final double[] evenParts;
    private final double[] even;
    private long solves;
    private long iterations;

    /**
     * All solutions at a shift.
     *
     * @param solutions solution of each source
     * @param bedContent what the bed releases over each cell per metre of drawdown (m²); empty without one
     * @param parts {@code [source]} parts of the water balance
     */
    @SuppressWarnings("ArrayRecordComponent") // read in loops, never compared
    private record AtShift(WindowedField[] solutions, FloatBuffer bedContent, double[][] parts) {}

    /**
     * Fields of a problem, to be filled by {@link TransferSolves}.
     *
     * @param problem the problem
     * @param others what moves heads besides bores and springs
     * @param startHead head of each cell at the start (m above datum), by which balances tell inflow from outflow
     * @param memory where solutions are kept
     */
    public SourceFields(FlowProblem problem, List<ChangingSource> others, double[] startHead, SolutionMemory memory) {
        this.problem = problem;
        this.memory = memory;
        this.others = List.copyOf(others);
        causes = problem.bores().size() + problem.springs().size();
        sumOfShares = new double[causes + others.size()];
        Arrays.fill(sumOfShares, 0, causes, 1);
        for (int i = 0; i < others.size(); i++) {
            sumOfShares[causes + i] =
                    Arrays.stream(others.get(i).shares().weights()).sum();
        }
        balance = new BalanceParts(new FlowEquation(problem), BedRelaxation.of(problem), startHead);
        even = new double[startHead.length];
        boolean[] active = problem.aquifer().active();
        Arrays.setAll(even, cell -> active[cell] ? 1 : 0);
        try (WorkerTeam alone = new WorkerTeam(1)) {
            CellLoops loops = new CellLoops(alone, even.length);
            balance.prepare(0, loops);
            evenParts = balance.of(even, CellWindow.whole(problem.aquifer().grid()));
        }
    }

    /** Takes the solutions at a shift; sources other than bores and springs follow from a place on. */
    void take(double shift, ShiftedSolves solves, int firstOther) {
        balance.prepare(shift, solves.loops());
        this.solves = solves.solves();
        iterations = solves.iterations();
        int[] places = IntStream.range(0, sources())
                .map(source -> source < causes ? source : firstOther + source - causes)
                .toArray();
        double[][] parts = new double[sources()][];
        WindowedField[] solutions = new WindowedField[sources()];
        solves.forSources(sources(), source -> {
            double[] drawdown = solves.drawdown(places[source]);
            CellWindow window = solves.window(places[source]);
            parts[source] = balance.of(drawdown, window);
            solutions[source] = WindowedField.of(window, drawdown, memory);
        });
        shifts.add(new AtShift(solutions, memory.keep(bedContent()), parts));
    }

    /** In single precision; empty if no bed stores water. */
    private float[] bedContent() {
        float[] content = new float[balance.hasBed() ? even.length : 0];
        double[] exact = balance.bedContent();
        for (int cell = 0; cell < content.length; cell++) {
            content[cell] = (float) exact[cell];
        }
        return content;
    }

    /** The grid of the fields. */
    public RectilinearGrid grid() {
        return problem.aquifer().grid();
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
        return shifts.stream()
                .map(shift -> shift.parts()[source])
                .mapToDouble(parts -> parts[BalanceParts.STORAGE] + parts[BalanceParts.BED])
                .toArray();
    }

    /** What passes through ties to given heads in the solution at each shift (-). */
    public double[] passed(int source) {
        return shifts.stream()
                .mapToDouble(shift -> flows(shift.parts()[source]))
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
            for (int a = 0; a < shifts.size(); a++) {
                addTo(sums, weights[source][a], shifts.get(a).parts()[source]);
            }
            addTo(sums, weights[source][shifts.size()], evenParts);
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
        sums.add(layers(weights));
        double[] evenFalls = Arrays.stream(weights)
                .mapToDouble(field -> Arrays.stream(field)
                        .mapToDouble(ofSource -> ofSource[shifts.size()])
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
     */
    public double[] sumIn(double[][] weights, int[] cells) {
        int columns = grid().columns();
        double[] sums = new double[cells.length];
        for (int source = 0; source < sources(); source++) {
            for (int i = 0; i < cells.length; i++) {
                sums[i] += weights[source][shifts.size()] * even[cells[i]];
                for (int a = 0; a < shifts.size(); a++) {
                    WindowedField solution = shifts.get(a).solutions()[source];
                    sums[i] += weights[source][a] * solution.at(cells[i] / columns, cells[i] % columns);
                }
            }
        }
        return sums;
    }

    /**
     * All solutions in a cell.
     *
     * @param cell the cell
     * @return {@code [source][shift]} value of each solution, and of an even fall after them
     */
    public double[][] solutionsIn(int cell) {
        int columns = grid().columns();
        double[][] values = new double[sources()][shifts.size() + 1];
        for (int source = 0; source < values.length; source++) {
            for (int a = 0; a < shifts.size(); a++) {
                values[source][a] = shifts.get(a).solutions()[source].at(cell / columns, cell % columns);
            }
            values[source][shifts.size()] = even[cell];
        }
        return values;
    }

    /** Group by group, so that few rows are in the cache at a time. */
    private List<FieldSums.Layer> layers(double[][][] weights) {
        List<FieldSums.Layer> layers = new ArrayList<>();
        for (int first = 0; first < sources(); first += GROUP) {
            int end = Math.min(sources(), first + GROUP);
            for (int a = 0; a < shifts.size(); a++) {
                layers.add(new FieldSums.Layer(
                        Arrays.copyOfRange(shifts.get(a).solutions(), first, end),
                        weightsAt(weights, first, end, a),
                        shifts.get(a).bedContent()));
            }
        }
        return layers;
    }

    private static double[][] weightsAt(double[][][] weights, int first, int end, int shift) {
        double[][] some = new double[weights.length][end - first];
        for (int field = 0; field < some.length; field++) {
            for (int source = first; source < end; source++) {
                some[field][source - first] = weights[field][source][shift];
            }
        }
        return some;
    }
}

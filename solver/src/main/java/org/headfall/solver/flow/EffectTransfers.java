package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Laplace transforms of the drawdown at some receptors by a unit impulse of discharge in any cell. Because what A does at
 * B is what B does at A, they are the drawdown of all cells by an impulse at the receptor: {@code h_r(s) = (s S + A +
 * bed(s))^-1 g_r}.
 *
 * <p>Springs and bores whose discharge follows head give back a part. With F the weights of these points, C the drawdown
 * between points that the grid does not carry and K the discharge that each loses per metre, the answer of the whole is by
 * the formula of Sherman, Morrison and Woodbury (Hager 1989, SIAM Review 31, 221-239)
 *
 * <pre>{@code h = h_r - h_F X,   X = (F^T h_F + C_FF + 1/K)^-1 (F^T h_r + C_Fr)}</pre>
 *
 * <p>which is again the answer of a symmetric system, so {@code H = g^T h} and {@code -dH/ds = h^T W h} make a reduced
 * model as they do without these points.
 */
public final class EffectTransfers {

    private final double[] shifts;
    private final int receptors;
    private final double[][] values;
    private final double[][] falls;
    private final double[][][] fields;
    private final double[] atOnce;

    private final PointDischarges points;
    private final List<ObservedHead> observed;
    private final int[] sourceOfReceptor;
    private final int[] sourceOfPoint;
    private final HeadDependence dependence;
    private final int[] stations;

    /**
     * Solves for all receptors at all shifts. Holds 8 bytes a cell, receptor and shift.
     *
     * @param problem the problem
     * @param dependence bores and springs that give back
     * @param observed points that take no water, numbered after the bores and springs of the problem
     * @param stations numbers of the receptors: bores, then springs, then observed points
     * @param shifts values of the Laplace variable (1/d), positive, all different, evenly spaced in the logarithm
     * @param team threads of the linear solver
     */
    public EffectTransfers(
            FlowProblem problem,
            HeadDependence dependence,
            List<ObservedHead> observed,
            int[] stations,
            double[] shifts,
            WorkerTeam team) {
        this.shifts = shifts.clone();
        this.stations = stations.clone();
        this.observed = List.copyOf(observed);
        this.dependence = dependence;
        receptors = stations.length;
        points = new PointDischarges(problem);
        values = new double[receptors][shifts.length];
        falls = new double[receptors][shifts.length];
        fields = new double[receptors][shifts.length][];
        atOnce = new double[receptors];
        sourceOfReceptor = new int[receptors];
        sourceOfPoint = new int[dependence.points().size()];
        List<CellWeights> sources = sources();
        ShiftedSolves solves = new ShiftedSolves(problem, sources, team);
        findAtOnce();
        for (int k = 0; k < shifts.length; k++) {
            solves.solve(shifts[k]);
            PairValues products = new PairValues(sources.size(), sources.size(), 1);
            solves.addFalls(sources.size(), products, 0);
            for (int receptor = 0; receptor < receptors; receptor++) {
                read(solves, sources, products, receptor, k);
            }
        }
    }

    /** Each place once, though it be a receptor and give back as well. */
    private List<CellWeights> sources() {
        List<CellWeights> sources = new ArrayList<>();
        Map<Integer, Integer> known = new HashMap<>();
        for (int receptor = 0; receptor < receptors; receptor++) {
            sourceOfReceptor[receptor] = source(stations[receptor], sources, known);
        }
        for (int i = 0; i < sourceOfPoint.length; i++) {
            sourceOfPoint[i] = source(dependence.points().get(i).index(), sources, known);
        }
        return sources;
    }

    private int source(int station, List<CellWeights> sources, Map<Integer, Integer> known) {
        return known.computeIfAbsent(station, key -> {
            sources.add(weights(key));
            return sources.size() - 1;
        });
    }

    private CellWeights weights(int station) {
        return station < points.count()
                ? points.weights(station)
                : observed.get(station - points.count()).weights();
    }

    /** Drawdown between a station and a bore or spring that the grid does not carry (d/m²). */
    private double unresolved(int station, int point) {
        return station < points.count()
                ? points.unresolved(station, point)
                : observed.get(station - points.count()).unresolved(point);
    }

    private double ownUnresolved(int station) {
        return station < points.count() ? points.unresolved(station, station) : 0;
    }

    private void findAtOnce() {
        DMatrixRMaj none = new DMatrixRMaj(sourceOfPoint.length, sourceOfPoint.length);
        for (int receptor = 0; receptor < receptors; receptor++) {
            double[] right = new double[sourceOfPoint.length];
            DMatrixRMaj shares = shares(none, right, stations[receptor]);
            double given = 0;
            for (int i = 0; i < right.length; i++) {
                given += right[i] * shares.get(i);
            }
            atOnce[receptor] = ownUnresolved(stations[receptor]) - given;
        }
    }

    /**
     * Discharge that each point loses per unit taken at a station.
     *
     * @param carried response between the points as the grid carries it; not changed
     * @param right in: response of the points to the station as the grid carries it; out: with what it does not
     * @param station the station
     */
    private DMatrixRMaj shares(DMatrixRMaj carried, double[] right, int station) {
        int n = right.length;
        DMatrixRMaj shares = new DMatrixRMaj(n, 1);
        if (n == 0) {
            return shares;
        }
        DMatrixRMaj matrix = carried.copy();
        DMatrixRMaj vector = new DMatrixRMaj(n, 1);
        for (int i = 0; i < n; i++) {
            HeadDependence.Point point = dependence.points().get(i);
            right[i] += unresolved(station, point.index());
            vector.set(i, right[i]);
            for (int j = 0; j < n; j++) {
                matrix.add(
                        i,
                        j,
                        points.unresolved(
                                point.index(), dependence.points().get(j).index()));
            }
            matrix.add(i, i, point.headPerDischarge());
        }
        if (!CommonOps_DDRM.solve(matrix, vector, shares)) {
            throw new IllegalStateException("discharges that follow head could not be solved for");
        }
        return shares;
    }

    private void read(ShiftedSolves solves, List<CellWeights> sources, PairValues products, int receptor, int k) {
        int n = sourceOfPoint.length;
        int source = sourceOfReceptor[receptor];
        DMatrixRMaj carried = new DMatrixRMaj(n, n);
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            right[i] = response(solves, sources, sourceOfPoint[i], source);
            for (int j = 0; j < n; j++) {
                carried.set(i, j, response(solves, sources, sourceOfPoint[i], sourceOfPoint[j]));
            }
        }
        DMatrixRMaj shares = shares(carried, right, stations[receptor]);
        double[] field = solves.drawdown(source).clone();
        double value = ownUnresolved(stations[receptor]) + response(solves, sources, source, source);
        double fall = products.of(source, source)[0];
        for (int i = 0; i < n; i++) {
            double share = shares.get(i);
            value -= share * right[i];
            subtract(share, solves.drawdown(sourceOfPoint[i]), field);
            fall -= 2 * share * products.of(source, sourceOfPoint[i])[0];
            for (int j = 0; j < n; j++) {
                fall += share * shares.get(j) * products.of(sourceOfPoint[i], sourceOfPoint[j])[0];
            }
        }
        values[receptor][k] = value - atOnce[receptor];
        falls[receptor][k] = fall;
        fields[receptor][k] = field;
    }

    private static double response(ShiftedSolves solves, List<CellWeights> sources, int i, int j) {
        return 0.5 * (sources.get(i).of(solves.drawdown(j)) + sources.get(j).of(solves.drawdown(i)));
    }

    private static void subtract(double share, double[] from, double[] field) {
        for (int cell = 0; cell < field.length; cell++) {
            field[cell] -= share * from[cell];
        }
    }

    /**
     * Discharge that each point that gives back loses per unit taken at a receptor.
     *
     * @param receptor the receptor
     * @param field drawdown of each cell by that unit, as {@link #fields} add up to it (d/m²)
     * @return share of each point of the dependence, in its order (-)
     */
    public double[] givenBack(int receptor, double[] field) {
        double[] right = new double[sourceOfPoint.length];
        for (int i = 0; i < right.length; i++) {
            right[i] = points.weights(dependence.points().get(i).index()).of(field);
        }
        return shares(new DMatrixRMaj(right.length, right.length), right, stations[receptor])
                .getData();
    }

    /** Cells from which the bores and springs that give back are fed. */
    public int[] givingCells() {
        return dependence.points().stream()
                .flatMapToInt(
                        point -> Arrays.stream(points.weights(point.index()).cells()))
                .toArray();
    }

    /** The shifts (1/d); not to be changed. */
    public double[] shifts() {
        return shifts;
    }

    /** H of a receptor and itself at every shift, without what comes at once (d/m²); not to be changed. */
    public double[] values(int receptor) {
        return values[receptor];
    }

    /** {@code -dH/ds} of a receptor and itself at every shift (d²/m²); not to be changed. */
    public double[] falls(int receptor) {
        return falls[receptor];
    }

    /** Drawdown of a receptor by its own unit discharge that comes at once (d/m²). */
    public double atOnce(int receptor) {
        return atOnce[receptor];
    }

    /** Transform of the drawdown of each cell at every shift (d/m²); not to be changed. */
    public double[][] fields(int receptor) {
        return fields[receptor];
    }
}

package org.headfall.solver.allocation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ojalgo.matrix.store.R064Store;
import org.ojalgo.matrix.store.RawStore;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import org.ojalgo.optimisation.linear.LinearSolver;

/**
 * Variables between zero and upper bounds whose cost, linear or convex quadratic, is to be small while rows are kept.
 *
 * <p>Linear programmes go to the solver as arrays: a model of named expressions holds decimal numbers, which took a hundred
 * times longer for rows of 2,000 variables. Variables are shares of their upper bounds and the largest coefficient of each
 * row is 1, so that all numbers are of one size.
 *
 * @param most upper bound of each variable, not negative
 * @param cost cost of a unit of each variable, negative for a gain
 * @param curvature symmetric positive semidefinite matrix D of a further cost {@code x^T D x / 2}, none if empty
 * @param excesses further costs of sums of variables in excess of bounds
 */
@SuppressWarnings("ArrayRecordComponent") // a large matrix, shared and never compared
public record Programme(double[] most, double[] cost, double[][] curvature, List<Excess> excesses) {

    /** Amounts below this are rounding. */
    private static final double ROUNDING = 1e-9;

    /** Share of the largest coefficient of a row below which nothing is left of it. */
    private static final double TIGHT = 1e-6;

    /**
     * Corners that are visited at the most for each variable and row of a curved programme. Where many rows meet, as those of schedules
     * that are as good as each other do, the solver may go round in circles, from corner to corner of the same values.
     */
    private static final int MOST_CORNERS = 50;

    /** Variables up to which all upper bounds enter from the beginning. */
    private static final int FEW = 100;

    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException if an excess has not one coefficient a variable
     */
    public Programme {
        excesses = List.copyOf(excesses);
        for (Excess excess : excesses) {
            if (excess.coefficients().length != most.length) {
                throw new IllegalArgumentException("an excess has " + excess.coefficients().length
                        + " coefficients for " + most.length + " variables");
            }
        }
    }

    /** Without costs of excesses. */
    public Programme(double[] most, double[] cost, double[][] curvature) {
        this(most, cost, curvature, List.of());
    }

    /** Without curvature. */
    public static Programme linear(double[] most, double[] cost) {
        return new Programme(most, cost, new double[0][]);
    }

    /** Cost of values, with the curved part of it. */
    public double valueOf(double[] x) {
        double value = 0;
        for (int i = 0; i < x.length; i++) {
            double slope = cost[i];
            for (int j = 0; j < curvature.length; j++) {
                slope += 0.5 * curvature[i][j] * x[j];
            }
            value += slope * x[i];
        }
        for (Excess excess : excesses) {
            value += excess.costOf(x);
        }
        return value;
    }

    /**
     * The best values.
     *
     * @param rows rows to keep
     * @return the optimum; empty if the rows contradict each other
     * @throws UnsolvedException if the solver fails for another reason
     */
    public Optional<Optimum> solve(List<Row> rows) {
        return solve(rows, new BitSet());
    }

    /**
     * The best values, for one of a row of similar programmes.
     *
     * @param rows rows to keep
     * @param pressing variables that may press against their upper bounds, of which those that have done so are added: the
     *     better they are known, the faster
     * @return the optimum; empty if the rows contradict each other
     * @throws UnsolvedException if values that keep the rows, but not the best, were found in as many steps as are allowed, or
     *     the solver fails for another reason
     */
    public Optional<Optimum> solve(List<Row> rows, BitSet pressing) {
        if (!excesses.isEmpty()) {
            ExcessVariables with = new ExcessVariables(this);
            return with.programme()
                    .solve(with.rows(rows))
                    .map(optimum -> new Optimum(Arrays.copyOf(optimum.x(), most.length), optimum.value()));
        }
        Optimisation.Result result = curvature.length == 0
                ? linear(products(cost, most), scaled(rows), bounds(rows), pressing)
                : model(rows);
        return isSolved(result) ? Optional.of(new Optimum(values(result), result.getValue())) : Optional.empty();
    }

    private static double[] products(double[] first, double[] second) {
        double[] products = first.clone();
        Arrays.setAll(products, i -> first[i] * second[i]);
        return products;
    }

    /**
     * A linear programme of shares, which come first, and other variables that are not bounded above. The solver knows no
     * upper bounds but as rows; only those enter that solutions have broken, and the bound of all shares together, without
     * which the first solutions would be infinite.
     */
    private Optimisation.Result linear(double[] weights, double[][] left, double[] right, BitSet pressing) {
        if (most.length <= FEW) {
            pressing.set(0, most.length);
        }
        while (true) {
            int[] bounded = pressing.stream().toArray();
            double[][] rows = Arrays.copyOf(left, left.length + bounded.length + 1);
            double[] bounds = Arrays.copyOf(right, rows.length);
            for (int k = 0; k < bounded.length; k++) {
                rows[left.length + k] = new double[weights.length];
                rows[left.length + k][bounded[k]] = 1;
                bounds[left.length + k] = 1;
            }
            rows[rows.length - 1] = new double[weights.length];
            Arrays.fill(rows[rows.length - 1], 0, most.length, 1.0 / most.length);
            bounds[rows.length - 1] = 1;
            Optimisation.Result result = LinearSolver.newBuilder(weights)
                    .inequalities(RawStore.wrap(rows), R064Store.FACTORY.column(bounds))
                    .solve();
            boolean kept = true;
            for (int i = 0; i < most.length; i++) {
                if (result.doubleValue(i) > 1 + ROUNDING && !pressing.get(i)) {
                    pressing.set(i);
                    kept = false;
                }
            }
            if (kept || !result.getState().isFeasible()) {
                return result;
            }
        }
    }

    private double[][] scaled(List<Row> rows) {
        return rows.stream().map(this::scaled).toArray(double[][]::new);
    }

    private double[] scaled(Row row) {
        double scale = scale(row);
        double[] scaled = new double[most.length];
        Arrays.setAll(scaled, i -> row.coefficients()[i] * most[i] / scale);
        return scaled;
    }

    private double[] bounds(List<Row> rows) {
        return rows.stream().mapToDouble(row -> row.bound() / scale(row)).toArray();
    }

    private Optimisation.Result model(List<Row> rows) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Variable> variables = new ArrayList<>();
        for (int i = 0; i < most.length; i++) {
            variables.add(model.newVariable("x" + i).lower(0).upper(1).weight(cost[i] * most[i]));
        }
        if (curvature.length > 0) {
            addCurvature(model, variables);
        }
        for (int k = 0; k < rows.size(); k++) {
            double[] scaled = scaled(rows.get(k));
            Expression expression =
                    model.newExpression(String.valueOf(k)).upper(rows.get(k).bound() / scale(rows.get(k)));
            for (int i = 0; i < most.length; i++) {
                if (scaled[i] != 0) {
                    expression.set(variables.get(i), scaled[i]);
                }
            }
        }
        model.options.iterations_abort = MOST_CORNERS * (most.length + rows.size());
        return model.minimise();
    }

    private void addCurvature(ExpressionsBasedModel model, List<Variable> variables) {
        Expression expression = model.newExpression("curvature").weight(1);
        for (int i = 0; i < most.length; i++) {
            for (int j = 0; j < most.length; j++) {
                double value = 0.5 * curvature[i][j] * most[i] * most[j];
                if (value != 0) {
                    expression.set(variables.get(i), variables.get(j), value);
                }
            }
        }
    }

    /** Whether there is an optimum; if not, rows contradict each other. Any other end is the solver's failure, not the rows'. */
    private static boolean isSolved(Optimisation.Result result) {
        boolean optimal = result.getState().isOptimal();
        if (result.getState() == Optimisation.State.FEASIBLE) {
            throw new UnsolvedException(
                    "the programme was not solved: values that keep all rows were found, but not the best of them");
        }
        if (!optimal && result.getState() != Optimisation.State.INFEASIBLE) {
            throw new UnsolvedException("the programme was not solved: " + result.getState());
        }
        return optimal;
    }

    /**
     * By how little rows must give way so that all can be kept: least in all, each weighted by what its giving way costs.
     *
     * @param rows the rows
     * @return by how much each row must; empty if even that does not help
     * @throws UnsolvedException if the solver fails for another reason
     */
    public Optional<double[]> leastRelaxation(List<Row> rows) {
        return leastRelaxation(rows, IntStream.range(0, rows.size()).toArray());
    }

    /**
     * By how little rows must give way so that all can be kept, where some give way together by the same amount: least in
     * all, each amount weighted by what it costs in the first of its rows.
     *
     * @param rows the rows
     * @param together number of each row among those that give way together, from 0 on
     * @return the amount of each number; empty if even that does not help
     * @throws UnsolvedException if the solver fails for another reason
     */
    public Optional<double[]> leastRelaxation(List<Row> rows, int[] together) {
        int n = most.length;
        int amounts = Arrays.stream(together).max().orElse(-1) + 1;
        double[] weights = new double[n + amounts];
        double[][] left = new double[rows.size()][];
        for (int k = rows.size() - 1; k >= 0; k--) {
            Row row = rows.get(k);
            left[k] = Arrays.copyOf(scaled(row), weights.length);
            if (row.mayGiveWay()) {
                weights[n + together[k]] = row.givesWay();
                left[k][n + together[k]] = -1 / scale(row);
            }
        }
        Optimisation.Result result = linear(weights, left, bounds(rows), new BitSet());
        if (!isSolved(result)) {
            return Optional.empty();
        }
        double[] relaxation = new double[amounts];
        Arrays.setAll(relaxation, i -> {
            double given = result.doubleValue(n + i);
            return given > ROUNDING ? given : 0;
        });
        return Optional.of(relaxation);
    }

    private double scale(Row row) {
        double largest = 0;
        for (int i = 0; i < most.length; i++) {
            largest = Math.max(largest, Math.abs(row.coefficients()[i] * most[i]));
        }
        return largest > 0 ? largest : 1;
    }

    private double[] values(Optimisation.Result result) {
        double[] x = new double[most.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = most[i] * Math.max(0, Math.min(1, result.doubleValue(i)));
        }
        return x;
    }

    /**
     * What rows cost: the solution of the dual programme. Where cost is curved, it is the dual of the programme whose cost is straight
     * with the slope g at the optimum x, which has the same multipliers (Karush, Kuhn and Tucker): least {@code b p + m} with
     * {@code A^T p + m >= -g}, where p are prices of the rows {@code A x <= b} that leave nothing, and m those of upper bounds, all
     * for shares. Multipliers that the solver gives with the primal programme are others where zero breaks a row or the cost is
     * curved.
     *
     * <p>The best value is convex in the bounds, and a price is one of its slopes. Where more rows and bounds meet at the optimum
     * than there are variables, slopes to both sides differ and there are many prices, of which one is given, any: a unit more
     * gains no more than the price, and a unit less costs no less (Bertsimas and Tsitsiklis 1997, Introduction to Linear
     * Optimization, section 5.3, from memory). Of a row that is there twice, more of either alone gains nothing, though one may
     * bear the whole price.
     *
     * @param rows rows that can be kept
     * @return multiplier of each row, not negative: an upper bound of what a unit more of its bound alone gains, which is that gain
     *     for small changes where the optimum is not degenerate
     * @throws IllegalStateException if rows contradict each other, or the solver fails
     */
    public double[] prices(List<Row> rows) {
        if (!excesses.isEmpty()) {
            ExcessVariables with = new ExcessVariables(this);
            return Arrays.copyOf(with.programme().prices(with.rows(rows)), rows.size());
        }
        double[] x = solve(rows)
                .orElseThrow(() -> new IllegalStateException("rows that contradict each other have no prices"))
                .x();
        double[] slope = slopeAt(x);
        double largest = Math.max(
                Double.MIN_NORMAL, Arrays.stream(slope).map(Math::abs).max().orElse(0));
        int[] tight = IntStream.range(0, rows.size())
                .filter(k -> rows.get(k).left(x) < TIGHT * scale(rows.get(k)))
                .toArray();
        int n = most.length;
        double[] weights = new double[tight.length + n];
        double[][] left = new double[n][weights.length];
        double[] right = new double[n];
        for (int k = 0; k < tight.length; k++) {
            Row row = rows.get(tight[k]);
            double[] scaled = scaled(row);
            weights[k] = row.bound() / scale(row);
            for (int i = 0; i < n; i++) {
                left[i][k] = -scaled[i];
            }
        }
        for (int i = 0; i < n; i++) {
            weights[tight.length + i] = 1;
            left[i][tight.length + i] = -1;
            right[i] = slope[i] / largest;
        }
        Optimisation.Result result = LinearSolver.newBuilder(weights)
                .inequalities(RawStore.wrap(left), R064Store.FACTORY.column(right))
                .solve();
        if (!isSolved(result)) {
            throw new IllegalStateException("the prices of rows that can be kept were not found");
        }
        double[] prices = new double[rows.size()];
        for (int k = 0; k < tight.length; k++) {
            prices[tight[k]] = Math.max(0, result.doubleValue(k)) * largest / scale(rows.get(tight[k]));
        }
        return prices;
    }

    /** By how much the cost grows with the share of each variable in its bound. */
    private double[] slopeAt(double[] x) {
        double[] slope = cost.clone();
        for (int i = 0; i < curvature.length; i++) {
            for (int j = 0; j < x.length; j++) {
                slope[i] += curvature[i][j] * x[j];
            }
        }
        return products(slope, most);
    }
}

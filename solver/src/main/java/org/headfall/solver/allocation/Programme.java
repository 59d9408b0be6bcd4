package org.headfall.solver.allocation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Variables between zero and upper bounds whose cost, linear or convex quadratic, is to be small while rows are kept.
 *
 * @param most upper bound of each variable, positive
 * @param cost cost of a unit of each variable, negative for a gain
 * @param curvature symmetric positive semidefinite matrix D of a further cost {@code x^T D x / 2}, none if empty
 */
@SuppressWarnings("ArrayRecordComponent") // a large matrix, shared and never compared
public record Programme(double[] most, double[] cost, double[][] curvature) {

    /** Prices below this share of the largest are rounding. */
    private static final double ROUNDING = 1e-9;

    /** Without curvature. */
    public static Programme linear(double[] most, double[] cost) {
        return new Programme(most, cost, new double[0][]);
    }

    /**
     * The best values.
     *
     * @param rows rows to keep
     * @return the optimum; empty if the rows contradict each other
     * @throws IllegalStateException if the solver fails for another reason
     */
    public Optional<Optimum> solve(List<Row> rows) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Variable> variables = variables(model);
        for (int i = 0; i < cost.length; i++) {
            // Variables as shares of their upper bounds, so that all numbers are of one size.
            variables.get(i).weight(cost[i] * most[i]);
        }
        if (curvature.length > 0) {
            addCurvature(model, variables);
        }
        rows.forEach(row -> add(model, variables, row));
        Optimisation.Result result = model.minimise();
        if (!result.getState().isFeasible()) {
            requireContradiction(result);
            return Optional.empty();
        }
        return Optional.of(new Optimum(values(result), result.getValue(), prices(result, rows)));
    }

    private static void requireContradiction(Optimisation.Result result) {
        if (result.getState().isUnexplored() || result.getState() == Optimisation.State.UNBOUNDED) {
            throw new IllegalStateException("the programme was not solved: " + result.getState());
        }
    }

    /**
     * By how little rows must give way so that all can be kept: least in all, each weighted by what its giving way costs.
     *
     * @param rows the rows
     * @return for each row that must, by how much; empty if even that does not help
     */
    public Optional<Map<String, Double>> leastRelaxation(List<Row> rows) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        List<Variable> variables = variables(model);
        Map<String, Variable> slacks = new LinkedHashMap<>();
        for (Row row : rows) {
            Expression expression = add(model, variables, row);
            if (Double.isFinite(row.givesWay())) {
                Variable slack =
                        model.newVariable("slack of " + row.name()).lower(0).weight(row.givesWay());
                expression.set(slack, -1.0 / scale(row));
                slacks.put(row.name(), slack);
            }
        }
        Optimisation.Result result = model.minimise();
        if (!result.getState().isFeasible()) {
            return Optional.empty();
        }
        Map<String, Double> relaxation = new LinkedHashMap<>();
        slacks.forEach((name, slack) -> {
            double given = result.doubleValue(model.indexOf(slack));
            if (given > ROUNDING) {
                relaxation.put(name, given);
            }
        });
        return Optional.of(relaxation);
    }

    private List<Variable> variables(ExpressionsBasedModel model) {
        List<Variable> variables = new ArrayList<>();
        for (int i = 0; i < most.length; i++) {
            variables.add(model.newVariable("x" + i).lower(0).upper(1));
        }
        return variables;
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

    private double scale(Row row) {
        double largest = 0;
        for (int i = 0; i < most.length; i++) {
            largest = Math.max(largest, Math.abs(row.coefficients()[i] * most[i]));
        }
        return largest > 0 ? largest : 1;
    }

    private Expression add(ExpressionsBasedModel model, List<Variable> variables, Row row) {
        double scale = scale(row);
        Expression expression = model.newExpression(row.name()).upper(row.bound() / scale);
        for (int i = 0; i < most.length; i++) {
            double value = row.coefficients()[i] * most[i] / scale;
            if (value != 0) {
                expression.set(variables.get(i), value);
            }
        }
        return expression;
    }

    private double[] values(Optimisation.Result result) {
        double[] x = new double[most.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = most[i] * Math.max(0, Math.min(1, result.doubleValue(i)));
        }
        return x;
    }

    private Map<String, Double> prices(Optimisation.Result result, List<Row> rows) {
        Map<String, Double> scales = new LinkedHashMap<>();
        rows.forEach(row -> scales.put(row.name(), scale(row)));
        Map<String, Double> prices = new LinkedHashMap<>();
        for (var multiplier : result.getMatchedMultipliers()) {
            String name = multiplier.getKey().getKey().getName();
            double scale = scales.getOrDefault(name, Double.NaN);
            double price = Math.abs(multiplier.doubleValue()) / scale;
            if (price > 0) {
                prices.put(name, price);
            }
        }
        return prices;
    }
}

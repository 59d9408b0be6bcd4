package org.headfall.validation.example;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.headfall.validation.table.ReferenceTable;

/**
 * Field data of a pumping test, and the parameters that fit a closed form to it best: least squares, by the logarithms of
 * the parameters.
 *
 * @param points distance, time and value of each measurement
 */
record PumpingTest(List<Point> points) {

    private static final int MOST_EVALUATIONS = 10_000;
    private static final double STEP = 1e-6;

    /**
     * A measurement.
     *
     * @param distance distance from the bore, in the unit of the source
     * @param days time (d)
     * @param value what was measured
     */
    record Point(double distance, double days, double value) {}

    /** A closed form with free parameters. */
    interface Model {

        /**
         * Value at a measurement.
         *
         * @param parameters the parameters
         * @param point where and when
         */
        double at(double[] parameters, Point point);
    }

    /**
     * Best parameters and what they leave.
     *
     * @param parameters the parameters
     * @param residual root mean square of the residuals
     */
    @SuppressWarnings("ArrayRecordComponent") // a result that is read once, never compared
    record Fit(double[] parameters, double residual) {}

    /** Reads one test, all distances. */
    static PumpingTest read(String name) {
        List<Point> points = new ArrayList<>();
        for (NamedCsvRecord row : ReferenceTable.rows("pumping_tests.csv")) {
            if (row.getField("test").equals(name)) {
                points.add(new Point(
                        ReferenceTable.number(row, "r"),
                        ReferenceTable.number(row, "t_min") / Units.MINUTES_A_DAY,
                        ReferenceTable.number(row, "value")));
            }
        }
        return new PumpingTest(points);
    }

    /** Measurements at one distance. */
    PumpingTest at(double distance) {
        return new PumpingTest(
                points.stream().filter(point -> point.distance() == distance).toList());
    }

    /** Fits a model from a first guess so that the sum of the squared residuals is least. */
    Fit fit(Model model, double... guess) {
        return best(model, points.stream().mapToDouble(Point::value).toArray(), guess);
    }

    /** The same with each residual over the value measured. */
    Fit fitRelative(Model model, double... guess) {
        double[] ones = points.stream().mapToDouble(point -> 1).toArray();
        return best((parameters, point) -> model.at(parameters, point) / point.value(), ones, guess);
    }

    private Fit best(Model model, double[] target, double[] guess) {
        double[] start = new double[guess.length];
        for (int i = 0; i < guess.length; i++) {
            start[i] = Math.log(guess[i]);
        }
        LeastSquaresOptimizer.Optimum optimum = new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .target(target)
                        .model(logarithms -> valuesAndSlopes(model, logarithms))
                        .maxEvaluations(MOST_EVALUATIONS)
                        .maxIterations(MOST_EVALUATIONS)
                        .build());
        return new Fit(exponentials(optimum.getPoint().toArray()), optimum.getRMS());
    }

    private Pair<RealVector, RealMatrix> valuesAndSlopes(Model model, RealVector logarithms) {
        double[] middle = values(model, logarithms.toArray());
        double[][] slopes = new double[points.size()][logarithms.getDimension()];
        for (int j = 0; j < logarithms.getDimension(); j++) {
            RealVector up = logarithms.copy();
            up.addToEntry(j, STEP);
            RealVector down = logarithms.copy();
            down.addToEntry(j, -STEP);
            double[] above = values(model, up.toArray());
            double[] below = values(model, down.toArray());
            for (int i = 0; i < slopes.length; i++) {
                slopes[i][j] = (above[i] - below[i]) / (2 * STEP);
            }
        }
        return new Pair<>(new ArrayRealVector(middle), new Array2DRowRealMatrix(slopes));
    }

    private double[] values(Model model, double[] logarithms) {
        double[] parameters = exponentials(logarithms);
        return points.stream().mapToDouble(point -> model.at(parameters, point)).toArray();
    }

    private static double[] exponentials(double[] logarithms) {
        double[] parameters = new double[logarithms.length];
        for (int i = 0; i < parameters.length; i++) {
            parameters[i] = Math.exp(logarithms[i]);
        }
        return parameters;
    }
}

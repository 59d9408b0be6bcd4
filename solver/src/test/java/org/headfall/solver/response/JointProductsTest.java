package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.headfall.solver.flow.FlowEquation;
import org.junit.jupiter.api.Test;

/**
 * The reference are the definitions: products are summed up over cells from the solutions themselves, with storage as weights
 * and with the flow through faces and to given heads. No bed, whose storage a product would have to hold for every shift.
 */
class JointProductsTest {

    private static final double[] SHIFTS = {0, 1, 0.05, 0.002};

    /** The spring stands at 5,250 m and 12,250 m, on cells of 1 km. */
    private static final int SPRING_COLUMN = 5;

    private static final int SPRING_ROW = 12;

    /** Solutions are kept in single precision. */
    private static final double TOLERANCE = 2e-6;

    private final SolvedField field = SolvedField.of(SolvedField.field(false), SHIFTS);
    private final FlowEquation equation = new FlowEquation(field.problem());
    private final JointProducts products = field.products();
    private final double[] even = field.fields().evenField();

    private double mass(double[] one, double[] other) {
        double sum = 0;
        for (int cell = 0; cell < one.length; cell++) {
            sum += equation.storage()[cell] * one[cell] * other[cell];
        }
        return sum;
    }

    private double stiffness(double[] one, double[] other) {
        double[] flow = new double[one.length];
        equation.netInflow(new double[one.length], other, flow);
        double sum = 0;
        for (int cell = 0; cell < one.length; cell++) {
            sum -= one[cell] * flow[cell];
        }
        return sum;
    }

    /** A solution over its norm, with the even part taken out. */
    private double[] left(int solution) {
        double[] values = field.solution(solution / SHIFTS.length, solution % SHIFTS.length);
        double norm = Math.sqrt(mass(values, values));
        double part = mass(values, even) / norm / mass(even, even);
        double[] left = new double[values.length];
        Arrays.setAll(left, cell -> values[cell] / norm - part * even[cell]);
        return left;
    }

    @Test
    void productsOfSolutionsAreThoseSummedOverCells() {
        int solutions = field.sources().length * SHIFTS.length;
        for (int i = 0; i < solutions; i++) {
            double[] one = left(i);
            for (int j = 0; j < solutions; j++) {
                double[] other = left(j);
                String which = i + ", " + j;
                assertEquals(mass(one, other), products.mass().get(i, j), TOLERANCE, which);
                double expected = stiffness(one, other);
                double scale = Math.sqrt(stiffness(one, one) * stiffness(other, other));
                assertEquals(expected, products.stiffness(i, j), TOLERANCE * scale, which);
            }
        }
    }

    @Test
    void evenFallIsOneOfTheVectors() {
        double norm = Math.sqrt(mass(even, even));
        assertEquals(norm, products.evenNorm(), 1e-12 * norm);
        double stiffness = stiffness(even, even) / (norm * norm);
        assertEquals(stiffness, products.evenStiffness(), 1e-12 * stiffness);
        for (int i = 0; i < field.sources().length * SHIFTS.length; i++) {
            double[] solution = field.solution(i / SHIFTS.length, i % SHIFTS.length);
            double own = Math.sqrt(mass(solution, solution));
            assertEquals(own, products.norm(i), TOLERANCE * own);
            assertEquals(mass(solution, even) / (own * norm), products.evenPart(i), TOLERANCE);
            double toEven = stiffness(left(i), even) / norm;
            assertEquals(toEven, products.stiffnessToEven(i), 1e-5 * Math.abs(toEven) + TOLERANCE * stiffness);
        }
    }

    /** What drives a solution is how much of it the source sees: its drawdown there. */
    @Test
    void sourceDrivesASolutionByItsDrawdownThere() {
        for (int shift = 0; shift < SHIFTS.length; shift++) {
            for (int source = 0; source < 3; source++) {
                double there = field.transfer().values(1, source)[shift] / products.norm(SHIFTS.length + shift);
                assertEquals(there, products.driven(SHIFTS.length + shift, source), 1e-12 * Math.abs(there));
            }
        }
        double atSpring = field.solution(0, 1)[SPRING_ROW * 20 + SPRING_COLUMN];
        assertEquals(atSpring, products.driven(1, 2) * products.norm(1), 1e-6 * Math.abs(atSpring) + 1e-12);
    }
}

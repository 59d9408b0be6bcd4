package org.headfall.solver.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.headfall.solver.linear.WorkerTeam;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrapezoidalBdf2Test {

    /** {@code y' = -stiffness (y - cos t) - sin t}: the answer from y = 1 at t = 0 is cos t (Prothero and Robinson 1974). */
    private record ProtheroRobinson(double stiffness) implements ImplicitSystem {

        @Override
        public int size() {
            return 1;
        }

        @Override
        public void startRate(double day, double[] state, double[] rate) {
            rate[0] = -stiffness * (state[0] - Math.cos(day)) - Math.sin(day);
        }

        @Override
        public void continueFromLastStage() {}

        @Override
        public void baseFormed(int stage, Step step, double[] before, double[][] earlierRates, double[] base) {}

        @Override
        public void solveStage(
                int stage,
                double day,
                Step step,
                double[] base,
                double[][] earlierRates,
                double[] state,
                double[] rate) {
            double c = step.coefficient();
            state[0] = (base[0] + c * (stiffness * Math.cos(day) - Math.sin(day))) / (1 + c * stiffness);
            rate[0] = (state[0] - base[0]) / c;
        }

        @Override
        public double errorAfter(double time, double[] error) {
            error[0] /= 1 + time * stiffness;
            return Math.abs(error[0]);
        }

        @Override
        public void accepted(double day, Step step, double[] before, double[] after) {}
    }

    private static double errorWithStep(double stiffness, double length) {
        TrapezoidalBdf2 integrator = new TrapezoidalBdf2(
                new ProtheroRobinson(stiffness),
                new StepControl(Double.POSITIVE_INFINITY, length, 0),
                new WorkerTeam(1));
        double[] state = {1};
        integrator.restart(length);
        integrator.integrate(state, 0, 2);
        return Math.abs(state[0] - Math.cos(2));
    }

    @Test
    void stepsBelowTheSmallestAllowedThrowWithBothNumbersAndTheDay() {
        TrapezoidalBdf2 integrator = new TrapezoidalBdf2(
                new ProtheroRobinson(1), new StepControl(1e-12, Double.POSITIVE_INFINITY, 0.125), new WorkerTeam(1));
        integrator.restart(0.5);
        StepSizeException thrown =
                assertThrows(StepSizeException.class, () -> integrator.integrate(new double[] {1}, 0, 2));
        String message = String.valueOf(thrown.getMessage());
        assertTrue(message.startsWith("at day 0 the time step would have to be 0."), message);
        assertTrue(message.contains("smallest allowed 0.125 d"), message);
    }

    @Test
    void neverStepsFartherThanAllowed() {
        TrapezoidalBdf2 integrator =
                new TrapezoidalBdf2(new ProtheroRobinson(1), new StepControl(1, 0.05, 1e-12), new WorkerTeam(1));
        integrator.restart(1);
        integrator.integrate(new double[] {1}, 0, 2);
        assertTrue(integrator.steps() >= 40, integrator.steps() + " steps");
    }

    @Test
    void convergesWithSecondOrder() {
        double rate = Math.log(errorWithStep(1, 1.0 / 32) / errorWithStep(1, 1.0 / 64)) / Math.log(2);
        assertEquals(2, rate, 0.1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1e3, 1e9})
    void keepsTheToleranceWhateverTheStiffness(double stiffness) {
        double tolerance = 1e-4;
        TrapezoidalBdf2 integrator = new TrapezoidalBdf2(
                new ProtheroRobinson(stiffness),
                new StepControl(tolerance, Double.POSITIVE_INFINITY, 1e-12),
                new WorkerTeam(1));
        double[] state = {1};
        integrator.restart(1e-3);
        integrator.integrate(state, 0, 5);
        assertEquals(Math.cos(5), state[0], 10 * tolerance);
        assertTrue(integrator.largestError() <= tolerance);
        assertTrue(integrator.steps() < 400, "steps " + integrator.steps());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 10})
    void followsTheErrorItMakes(double stiffness) {
        TrapezoidalBdf2 integrator = new TrapezoidalBdf2(
                new ProtheroRobinson(stiffness),
                new StepControl(1e-4, Double.POSITIVE_INFINITY, 1e-12),
                new WorkerTeam(1));
        double[] state = {1};
        integrator.restart(1e-3);
        double largestTrue = 0;
        double largestEstimate = 0;
        for (int k = 1; k <= 50; k++) {
            integrator.integrate(state, 0.1 * (k - 1), 0.1 * k);
            largestTrue = Math.max(largestTrue, Math.abs(state[0] - Math.cos(0.1 * k)));
            largestEstimate = Math.max(largestEstimate, Math.abs(integrator.accumulatedError()[0]));
        }
        assertTrue(largestEstimate > 0.5 * largestTrue, largestEstimate + " against " + largestTrue);
        assertTrue(largestEstimate < 5 * largestTrue, largestEstimate + " against " + largestTrue);
    }
}

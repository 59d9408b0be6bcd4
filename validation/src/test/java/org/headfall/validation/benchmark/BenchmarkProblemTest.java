package org.headfall.validation.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.headfall.solver.linear.MultigridSolver;
import org.headfall.solver.linear.SolveReport;
import org.headfall.solver.linear.StoppingRule;
import org.headfall.solver.linear.WorkerTeam;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The benchmark's field and drawdowns against those of an independent program in another language, whose systems were
 * solved by a sparse Cholesky library to a residual below 2e-11.
 */
class BenchmarkProblemTest {

    @ParameterizedTest
    @CsvSource({
        "256, 23.9354681684, 883.589426891, 370.672610161, 1029.44105702",
        "512, 23.9354681684, 1443.27604319, 9.40298030979, 2198.07531163",
        "1024, 23.9354681684, 1592.51917844, 185.043061104, 54.6807843083"
    })
    void theFieldIsThatOfTheReference(int n, double corner, double middle, double southEast, double northEast) {
        TransmissivityField field = new TransmissivityField();
        assertEquals(corner, field.at(0, 0), 1e-10 * corner);
        assertEquals(middle, field.at(n / 2, n / 2), 1e-10 * middle);
        assertEquals(southEast, field.at(n - 1, 0), 1e-10 * southEast);
        assertEquals(northEast, field.at(n - 1, n - 1), 1e-10 * northEast);
    }

    @ParameterizedTest
    @CsvSource({
        "PLAIN, 256, 1, 0.486691596996, 6.90338145152, 19.7639132952",
        "PLAIN, 256, 365, 23.693491343, 40.3881858513, 57.0061943556",
        "PLAIN, 256, Infinity, 27.429286659, 44.9624610121, 61.821271557",
        "PLAIN, 512, 1, 0.122063091218, 21.9821796928, 264.54082326",
        "PLAIN, 512, 365, 21.7246625598, 72.442877243, 464.391568885",
        "PLAIN, 512, Infinity, 43.8166276394, 99.3390359216, 488.409467571",
        "ANISOTROPIC, 512, 1, 0.120991532801, 15.0620414665, 163.058166397",
        "ANISOTROPIC, 512, Infinity, 12.2687659741, 54.5640071367, 269.36405935",
        "NOISE, 512, 1, 0.122065752302, 33.7068156773, 420.643078094",
        "NOISE, 512, Infinity, 49.7369590309, 126.258138754, 744.988303341",
        "BLOCKS, 512, 1, 0.1220703125, 48.9830604935, 473.138861313",
        "BLOCKS, 512, 365, 44.5556640629, 2644.59363278, 3585.88975424",
        "STRETCHED, 512, 1, 0.758677955582, 34.1515566482, 246.176976119",
        "STRETCHED, 512, Infinity, 42.8114515, 79.2314504, 297.657630"
    })
    void drawdownsAreThoseOfTheReferenceWithinTwentyIterations(
            Variant variant, int n, double days, double mean, double bores, double max) {
        BenchmarkProblem problem = new BenchmarkProblem(n, n, variant);
        problem.setStep(days);
        double[] drawdown = new double[n * n];
        SolveReport report;
        try (WorkerTeam team = new WorkerTeam(2)) {
            report = new MultigridSolver(problem.matrix(), team)
                    .solve(problem.rightHandSide(), drawdown, StoppingRule.relative(1e-8));
        }
        assertTrue(report.iterations() <= 20, report::describe);
        DrawdownFigures figures = problem.figures(drawdown);
        // Seven digits, as the residual of 1e-8 allows; the last rows are printed with no more than eight.
        assertEquals(mean, figures.mean(), 1e-7 * mean);
        assertEquals(bores, figures.bores(), 1e-7 * bores);
        assertEquals(max, figures.max(), 1e-7 * max);
    }

    @ParameterizedTest
    @CsvSource({"1000, 1000, 365", "1023, 1023, Infinity", "4096, 64, 365", "64, 4096, Infinity"})
    void otherSizesTakeAtMostTwentyIterations(int columns, int rows, double days) {
        BenchmarkProblem problem = new BenchmarkProblem(columns, rows, Variant.PLAIN);
        problem.setStep(days);
        try (WorkerTeam team = new WorkerTeam(2)) {
            SolveReport report = new MultigridSolver(problem.matrix(), team)
                    .solve(problem.rightHandSide(), new double[columns * rows], StoppingRule.relative(1e-8));
            assertTrue(report.iterations() <= 20, report::describe);
        }
    }
}

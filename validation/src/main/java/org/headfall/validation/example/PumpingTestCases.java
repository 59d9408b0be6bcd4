package org.headfall.validation.example;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.headfall.solver.analytic.CooperJacobSolution;
import org.headfall.solver.analytic.FreeFlowingBoreSolution;
import org.headfall.solver.analytic.HantushJacobSolution;
import org.headfall.solver.analytic.RadialSolution;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.example.PumpingTest.Fit;

/** Closed forms fitted to field data of published tests. */
final class PumpingTestCases {

    private static final String KRUSEMAN = "Analysis and Evaluation of Pumping Test Data, 2nd ed.";
    private static final String HAND = "25 %: a curve laid over the points by hand weighs early ones more";

    private PumpingTestCases() {}

    static List<ValidationCase> all() {
        return List.of(
                test(
                        "test-korendijk",
                        "Theis fitted to the test at Oude Korendijk",
                        new Source(
                                "Kruseman and de Ridder",
                                1990,
                                KRUSEMAN,
                                "Table 3.1, data of de Wit (1963)",
                                Standing.READ),
                        PumpingTestCases::korendijk),
                test(
                        "test-dalem",
                        "Hantush and Jacob fitted to the test at Dalem",
                        new Source(
                                "Kruseman and de Ridder",
                                1990,
                                KRUSEMAN,
                                "Table 4.1, data of de Ridder (1961)",
                                Standing.READ),
                        PumpingTestCases::dalem),
                test(
                        "test-lohman",
                        "Theis fitted to the test of two observation wells",
                        new Source(
                                "Lohman",
                                1972,
                                "Ground-water hydraulics, USGS Professional Paper 708",
                                "table of wells N-1 and N-2",
                                Standing.MEMORY),
                        PumpingTestCases::lohman),
                test(
                        "test-todd",
                        "Theis fitted to drawdown, and the line of recovery",
                        new Source(
                                "Todd",
                                1980,
                                "Groundwater Hydrology, 2nd ed.",
                                "examples of chapter 4",
                                Standing.MEMORY),
                        PumpingTestCases::todd),
                test(
                        "test-grand-junction",
                        "Jacob and Lohman fitted to a bore that was let flow",
                        new Source(
                                "Jacob and Lohman",
                                1952,
                                "Transactions AGU 33(4), 559-569",
                                "Artesia Heights well near Grand Junction",
                                Standing.MEMORY),
                        PumpingTestCases::grandJunction));
    }

    private static ValidationCase test(String name, String title, Source source, ValidationCase.Procedure procedure) {
        return new ValidationCase(
                name,
                title,
                Part.EXAMPLES,
                List.of(source),
                "The closed forms fit measured drawdown as well as the same forms in SciPy do, and give a T near the one"
                        + " published.",
                "That the aquifer is what the closed form takes it for: what the fit leaves says how far it is not.",
                ValidationCase.Pace.FAST,
                procedure);
    }

    /** Compares with the least-squares fit of the same closed form made with SciPy. */
    private static void refit(Findings findings, String quantity, String unit, String digits, double ours) {
        findings.compare(Comparison.withPrinted(
                quantity + ", by SciPy least squares",
                unit,
                digits,
                ours,
                new Tolerance(
                        Math.max(Figures.halfUnitOfLastDigit(digits), 1e-3 * Math.abs(Double.parseDouble(digits))),
                        "0.1 %, or half a unit of the last digit kept")));
    }

    private static void byHand(Findings findings, String quantity, String unit, String printed, double ours) {
        findings.compare(Comparison.withPrinted(
                quantity + ", published match by hand",
                unit,
                printed,
                ours,
                Tolerance.share(0.25, Double.parseDouble(printed), HAND)));
    }

    /** An answer that the source found in a way good to 5 %. */
    private static void published(
            Findings findings, String quantity, String unit, String printed, double ours, String way) {
        findings.compare(Comparison.withPrinted(
                quantity + ", published",
                unit,
                printed,
                ours,
                Tolerance.share(0.05, Double.parseDouble(printed), "5 %: " + way)));
    }

    private static Fit theis(PumpingTest test, double rate, double transmissivity, double storativity) {
        return test.fit(
                (p, point) -> new TheisSolution(p[0], p[1]).drawdown(rate, point.distance(), point.days()),
                transmissivity,
                storativity);
    }

    private static void korendijk(Findings findings) {
        PumpingTest test = PumpingTest.read("korendijk");
        PumpingTest both = new PumpingTest(test.points().stream()
                .filter(point -> point.distance() == 30 || point.distance() == 90)
                .toList());
        String[][] expected = {
            {"480.5", "1.125e-04", "0.0317"}, {"501.1", "2.038e-04", "0.0227"}, {"462.6", "1.779e-04", "0.0501"}
        };
        PumpingTest[] parts = {test.at(30), test.at(90), both};
        String[] where = {"30 m", "90 m", "30 and 90 m"};
        for (int i = 0; i < parts.length; i++) {
            Fit fit = theis(parts[i], 788, 400, 1e-4);
            refit(findings, "T at " + where[i], "m²/d", expected[i][0], fit.parameters()[0]);
            refit(findings, "S at " + where[i], "-", expected[i][1], fit.parameters()[1]);
            refit(findings, "residual at " + where[i], "m", expected[i][2], fit.residual());
        }
        Fit fit = theis(both, 788, 400, 1e-4);
        byHand(findings, "T", "m²/d", "392", fit.parameters()[0]);
        plot(findings, test, new TheisSolution(fit.parameters()[0], fit.parameters()[1]), 788, "m", 30, 90);
    }

    private static void dalem(Findings findings) {
        PumpingTest test = PumpingTest.read("dalem");
        Fit fit = test.fit(
                (p, point) -> new HantushJacobSolution(p[0], p[1], p[2]).drawdown(761, point.distance(), point.days()),
                1700,
                1.5e-3,
                400);
        refit(findings, "T", "m²/d", "1751", fit.parameters()[0]);
        refit(findings, "S", "-", "1.519e-03", fit.parameters()[1]);
        refit(findings, "c", "d", "416", fit.parameters()[2]);
        refit(findings, "residual", "m", "0.00734", fit.residual());
        byHand(findings, "T", "m²/d", "1731", fit.parameters()[0]);
        byHand(findings, "S", "-", "1.9e-3", fit.parameters()[1]);
        byHand(findings, "c", "d", "450", fit.parameters()[2]);
        plot(
                findings,
                test,
                new HantushJacobSolution(fit.parameters()[0], fit.parameters()[1], fit.parameters()[2]),
                761,
                "m",
                30,
                60,
                90,
                120);
    }

    private static void lohman(Findings findings) {
        PumpingTest test = PumpingTest.read("lohman_theis");
        Fit fit = theis(test, 96_000, 13_000, 2e-4);
        refit(findings, "T", "ft²/d", "13379", fit.parameters()[0]);
        refit(findings, "S", "-", "2.015e-04", fit.parameters()[1]);
        refit(findings, "residual", "ft", "0.0092", fit.residual());
        published(findings, "T", "ft²/d", "13700", fit.parameters()[0], "matched by hand");
        published(findings, "S", "-", "2e-4", fit.parameters()[1], "matched by hand");
        plot(findings, test, new TheisSolution(fit.parameters()[0], fit.parameters()[1]), 96_000, "ft", 200, 400);
    }

    private static void todd(Findings findings) {
        PumpingTest test = PumpingTest.read("todd_theis");
        Fit fit = theis(test, 2500, 1100, 2e-4);
        refit(findings, "T", "m²/d", "1138", fit.parameters()[0]);
        refit(findings, "S", "-", "1.930e-4", fit.parameters()[1]);
        refit(findings, "residual", "m", "0.0052", fit.residual());
        published(findings, "T", "m²/d", "1110", fit.parameters()[0], "matched by hand");
        SimpleRegression recovery = new SimpleRegression();
        double pumped = 240 / Units.MINUTES_A_DAY;
        for (PumpingTest.Point point : PumpingTest.read("todd_recovery").points()) {
            recovery.addData(Math.log10((pumped + point.days()) / point.days()), point.value());
        }
        double transmissivity =
                CooperJacobSolution.fromLine(2500, 60, recovery.getSlope(), 1).transmissivity();
        published(
                findings,
                "T from the line of recovery",
                "m²/d",
                "1140",
                transmissivity,
                "slope read from a graph as 0.40 m a cycle");
        plot(findings, test, new TheisSolution(fit.parameters()[0], fit.parameters()[1]), 2500, "m", 60);
    }

    /** Discharge in US gallons a minute, head in feet; relative residuals as in the fit it is compared with. */
    private static void grandJunction(Findings findings) {
        PumpingTest test = PumpingTest.read("grand_junction_flow");
        double drawdown = 92.33;
        double radius = 0.276;
        Fit fit = test.fitRelative(
                (p, point) -> new FreeFlowingBoreSolution(p[0], p[1], radius).discharge(drawdown, point.days())
                        / Units.CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE,
                11,
                3e-5);
        refit(findings, "T", "ft²/d", "11.0", fit.parameters()[0]);
        refit(findings, "S", "-", "3.5e-5", fit.parameters()[1]);
        refit(findings, "relative residual", "-", "0.014", fit.residual());
        double[] days =
                test.points().stream().mapToDouble(PumpingTest.Point::days).toArray();
        double[] measured =
                test.points().stream().mapToDouble(PumpingTest.Point::value).toArray();
        double[] ours = new double[days.length];
        FreeFlowingBoreSolution solution =
                new FreeFlowingBoreSolution(fit.parameters()[0], fit.parameters()[1], radius);
        for (int i = 0; i < days.length; i++) {
            ours[i] = solution.discharge(drawdown, days[i]) / Units.CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE;
        }
        findings.plot(new Plot(
                "discharge of the bore",
                Plot.Scale.logarithmic("days"),
                Plot.Scale.linear("discharge (US gallons a minute)"),
                List.of(
                        new Series("measured", Series.Kind.PUBLISHED, 0, days, measured),
                        new Series("Headfall, fitted", Series.Kind.OURS, 0, days, ours))));
    }

    private static void plot(
            Findings findings,
            PumpingTest test,
            RadialSolution solution,
            double rate,
            String unit,
            double... distances) {
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < distances.length; i++) {
            double distance = distances[i];
            List<PumpingTest.Point> points = test.at(distance).points();
            double[] days = points.stream().mapToDouble(PumpingTest.Point::days).toArray();
            double[] measured =
                    points.stream().mapToDouble(PumpingTest.Point::value).toArray();
            double[] ours = points.stream()
                    .mapToDouble(point -> solution.drawdown(rate, distance, point.days()))
                    .toArray();
            String place = Figures.significant(distance, 4) + " " + unit;
            series.add(new Series("measured, " + place, Series.Kind.PUBLISHED, i, days, measured));
            series.add(new Series("Headfall, fitted, " + place, Series.Kind.OURS, i, days, ours));
        }
        findings.plot(new Plot(
                "drawdown over time",
                Plot.Scale.logarithmic("days"),
                Plot.Scale.linear("drawdown (" + unit + ")"),
                series));
    }
}

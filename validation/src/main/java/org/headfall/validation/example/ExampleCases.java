package org.headfall.validation.example;

import static org.headfall.validation.example.Units.CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE;
import static org.headfall.validation.example.Units.CUBIC_METRES_PER_CUBIC_FOOT;
import static org.headfall.validation.example.Units.GALLONS_PER_CUBIC_FOOT;
import static org.headfall.validation.example.Units.METRES_PER_FOOT;
import static org.headfall.validation.example.Units.MINUTES_A_DAY;
import static org.headfall.validation.example.Units.SECONDS_A_DAY;

import java.util.List;
import java.util.stream.Stream;
import org.headfall.solver.analytic.CooperJacobSolution;
import org.headfall.solver.analytic.HantushJacobSolution;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.ThiemSolution;
import org.headfall.solver.analytic.UnboundedSolution;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.analytic.side.HalfPlaneSolution;
import org.headfall.solver.analytic.side.SideCondition;
import org.headfall.solver.analytic.side.StreamDepletion;
import org.headfall.solver.bore.Pipe;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Misprint;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;

/** The cases of this package. */
public final class ExampleCases {

    private static final String SHAMMAS_2011 = "Fair, Geyer and Okun's Water and Wastewater Engineering, 3rd ed.";
    private static final String SHAMMAS_2015 = "Water Engineering: Hydraulics, Distribution and Treatment";
    private static final String DAVIS = "Water and Wastewater Engineering";
    private static final double GALLONS_TO_FEET = 1 / GALLONS_PER_CUBIC_FOOT;

    private ExampleCases() {}

    /** All of them. */
    public static List<ValidationCase> all() {
        return Stream.concat(worked().stream(), PumpingTestCases.all().stream()).toList();
    }

    private static List<ValidationCase> worked() {
        return List.of(
                example(
                        "example-match-point",
                        "T and S from a match point",
                        shammas2011("Example 3.1, p. 75"),
                        ExampleCases::matchPoint),
                example(
                        "example-drawdown-table",
                        "Drawdown of one bore from a minute to half a year",
                        shammas2011("Example 3.2, Table 3.3, p. 76"),
                        ExampleCases::drawdownTable),
                example(
                        "example-interrupted-recovery",
                        "Residual drawdown after three periods of pumping",
                        new Source("Shammas and Wang", 2015, SHAMMAS_2015, "Example 3.5, p. 63-64", Standing.READ),
                        ExampleCases::interruptedRecovery),
                example(
                        "example-three-bores-feet",
                        "Interference of three bores on a line, in feet",
                        new Source("Shammas and Wang", 2015, SHAMMAS_2015, "Example 3.6, p. 64-65", Standing.READ),
                        ExampleCases::threeBoresInFeet),
                example(
                        "example-stream",
                        "Steady drawdown beside a stream, by an image",
                        shammas2011("Example 3.8, p. 91-93"),
                        ExampleCases::besideStream),
                example(
                        "example-hundred-days",
                        "Drawdown after a hundred days",
                        davis("Example 4-2, p. 4-20"),
                        ExampleCases::hundredDays),
                example(
                        "example-straight-line",
                        "T and S from a straight line",
                        davis("Example 4-3, p. 4-21"),
                        ExampleCases::straightLine),
                example(
                        "example-three-bores-metres",
                        "Interference of three bores on a line, in metres",
                        davis("Example 4-4, p. 4-22 to 4-24"),
                        ExampleCases::threeBoresInMetres),
                example(
                        "example-korendijk-lines",
                        "Straight lines and steady state of the test at Oude Korendijk",
                        new Source(
                                "Kruseman and de Ridder",
                                1990,
                                "Analysis and Evaluation of Pumping Test Data, 2nd ed.",
                                "chapter 3",
                                Standing.MEMORY),
                        ExampleCases::korendijkLines),
                example(
                        "example-heath",
                        "T and S from a match point, one minute scale",
                        new Source(
                                "Heath",
                                1983,
                                "Basic Ground-Water Hydrology, USGS Water-Supply Paper 2220",
                                "analysis of aquifer tests",
                                Standing.MEMORY),
                        ExampleCases::heath),
                example(
                        "example-freeze-cherry",
                        "T and S from a match point, in seconds",
                        new Source("Freeze and Cherry", 1979, "Groundwater", "chapter 8", Standing.MEMORY),
                        ExampleCases::freezeCherry),
                example(
                        "example-fetter-leaky",
                        "Drawdown in a leaky aquifer after a day",
                        new Source(
                                "Fetter",
                                2001,
                                "Applied Hydrogeology, 4th ed.",
                                "p. 165; inputs read in course notes, answers recomputed",
                                Standing.RECOMPUTED),
                        ExampleCases::fetter),
                example(
                        "example-jenkins",
                        "Stream depletion at t = F",
                        new Source(
                                "Jenkins",
                                1968,
                                "USGS Techniques of Water-Resources Investigations, Book 4, Chapter D1",
                                "Table 1",
                                Standing.READ),
                        ExampleCases::jenkins),
                example(
                        "example-casing-friction",
                        "Friction and velocity in a pipe",
                        new Source(
                                "Colebrook",
                                1939,
                                "Journal of the Institution of Civil Engineers 11, 133-156",
                                "Darcy-Weisbach with the formula of Colebrook and White, recomputed",
                                Standing.RECOMPUTED),
                        ExampleCases::pipe),
                example(
                        "example-step-test",
                        "Loss in a bore from a step test",
                        new Source(
                                "Walton",
                                1987,
                                "Groundwater Pumping Tests",
                                "Table 4.1, p. 78: three steps; increments after Jacob (1947)",
                                Standing.READ),
                        ExampleCases::stepTest),
                example(
                        "example-step-test-clark",
                        "Loss in a bore from a step test of six steps",
                        new Source(
                                "Kruseman and de Ridder",
                                1990,
                                "Analysis and Evaluation of Pumping Test Data, 2nd ed.",
                                "chapter 14, data of Clark (1977): B, C and the drawdown of the last step",
                                Standing.MEMORY),
                        ExampleCases::clarkStepTest));
    }

    private static Source shammas2011(String place) {
        return new Source("Shammas and Wang", 2011, SHAMMAS_2011, place, Standing.READ);
    }

    private static Source davis(String place) {
        return new Source("Davis", 2010, DAVIS, place, Standing.READ);
    }

    private static ValidationCase example(
            String name, String title, Source source, ValidationCase.Procedure procedure) {
        return new ValidationCase(
                name,
                title,
                Part.EXAMPLES,
                List.of(source),
                "The closed forms, units and signs give the answer a textbook prints.",
                "The grid; textbooks round.",
                ValidationCase.Pace.FAST,
                procedure);
    }

    /** Match point W = 4.0 at u = 0.01, s = 5.0 ft at r²/t = 5e6 ft²/d; Q = 350 gpm. */
    private static void matchPoint(Findings findings) {
        double rate = 350 * CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE;
        double transmissivity = rate * 4.0 / (4 * Math.PI * 5.0);
        double storativity = 4 * transmissivity * 0.01 / 5e6;
        Example.printed(findings, "T", "gpd/ft", "3.2e4", transmissivity * GALLONS_PER_CUBIC_FOOT);
        Example.exact(findings, "T", "gpd/ft", "32086", transmissivity * GALLONS_PER_CUBIC_FOOT);
        Example.exact(findings, "S", "-", "3.4314e-05", storativity);
        // The printed curve is W(0.01) = 4.0379; the book reads it as 4.0, so the solution gives back 5.05 ft.
        TheisSolution theis = new TheisSolution(transmissivity, storativity);
        Example.fromGraph(
                findings,
                "s at r = 225 ft on the match point",
                "ft",
                "5.0",
                theis.drawdown(rate, 225, 225 * 225 / 5e6));
        findings.misprint(new Misprint(
                shammas2011("Example 3.1, SI solution, p. 75"),
                "Q",
                "1808",
                "1908",
                "350 gpm is 1907.9 m³/d, and the printed T of 398.72 m²/d belongs to it."));
    }

    private static void drawdownTable(Findings findings) {
        TheisSolution theis = new TheisSolution(3.2e4 * GALLONS_TO_FEET, 3.4e-5);
        double rate = 700 * CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE;
        double[] days = {1 / MINUTES_A_DAY, 1 / 24.0, 8 / 24.0, 1, 30, 180};
        String[] words = {"1 min", "1 h", "8 h", "1 d", "30 d", "180 d"};
        String[] printed = {"30.6", "40.8", "46.0", "48.8", "57.3", "61.8"};
        String[] exact = {"30.549", "40.812", "46.025", "48.779", "57.304", "61.796"};
        for (int i = 0; i < days.length; i++) {
            double drawdown = theis.drawdown(rate, 1, days[i]);
            Example.printed(findings, "s at " + words[i], "ft", printed[i], drawdown);
            Example.exact(findings, "s at " + words[i], "ft", exact[i], drawdown);
        }
    }

    /** Three periods of two hours; t/t' = 1440/1320, 1200/1080, 960/780 minutes. */
    private static void interruptedRecovery(Findings findings) {
        double[] minutes = {0, 120, 240, 360, 480, 660};
        double[] days = new double[minutes.length];
        double[] rates = new double[minutes.length];
        for (int i = 0; i < minutes.length; i++) {
            days[i] = minutes[i] / MINUTES_A_DAY;
            rates[i] = i % 2 == 0 ? 1907.5 : 0;
        }
        // The book uses the late logarithm, which is exact for a storativity this small.
        double residual = new TheisSolution(397.38, 1e-9).drawdown(new StepSchedule(days, rates), 1, 1);
        Example.printed(findings, "residual drawdown after 24 h", "m", "0.15", residual);
        findings.compare(Comparison.withPrinted(
                "residual drawdown after 24 h, recomputed",
                "m",
                "0.1528",
                residual,
                new Tolerance(5e-5, "half a unit of the last recomputed digit")));
    }

    private static void threeBoresInFeet(Findings findings) {
        TheisSolution theis = new TheisSolution(3.2e4 * GALLONS_TO_FEET, 3e-5);
        double rate = 700 * CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE;
        List<PumpedBore> bores =
                List.of(new PumpedBore(0, 0, rate), new PumpedBore(1000, 0, rate), new PumpedBore(2000, 0, rate));
        String[] what = {"own drawdown", "drawdown 1000 ft away", "drawdown 2000 ft away"};
        double[] distances = {1, 1000, 2000};
        String[] printed = {"54.9", "20.3", "16.8"};
        String[] exact = {"54.864", "20.234", "16.76"};
        for (int i = 0; i < distances.length; i++) {
            double drawdown = theis.drawdown(rate, distances[i], 10);
            Example.printed(findings, what[i], "ft", printed[i], drawdown);
            Example.exact(findings, what[i], "ft", exact[i], drawdown);
        }
        Example.printed(findings, "all three, in an outer bore", "ft", "92", theis.drawdown(bores, 0, 1, 10));
        Example.exact(findings, "all three, in an outer bore", "ft", "91.858", theis.drawdown(bores, 0, 1, 10));
        Example.printed(findings, "all three, in the centre bore", "ft", "95.5", theis.drawdown(bores, 1000, 1, 10));
        Example.exact(findings, "all three, in the centre bore", "ft", "95.332", theis.drawdown(bores, 1000, 1, 10));
    }

    /** Bore 1000 ft from a stream; the state long after pumping began is the steady one. */
    private static void besideStream(Findings findings) {
        UnboundedSolution theis = new TheisSolution(3.2e4 * GALLONS_TO_FEET, 1e-6);
        HalfPlaneSolution field = new HalfPlaneSolution(theis, SideCondition.FIXED_HEAD);
        PumpedBore bore = new PumpedBore(1000, 0, 700 * CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE);
        double late = 1e4;
        double inBore = field.drawdown(bore, 1000, 1, late);
        double near = field.drawdown(bore, 500, 0, late);
        double beyond = field.drawdown(bore, 1500, 0, late);
        double feet = 0.3048;
        String rounding = "1.5 %: the book rounds 2.303 Q/(2 pi T) = 3.52 m to 3.5 m before it multiplies";
        Example.fromRounded(findings, "drawdown in the bore", "m", "11.55", inBore * feet, 0.015, rounding);
        Example.exact(findings, "drawdown in the bore", "ft", "38.106", inBore);
        Example.fromRounded(findings, "drawdown 500 ft from the stream", "m", "1.67", near * feet, 0.015, rounding);
        Example.exact(findings, "drawdown 500 ft from the stream", "ft", "5.5078", near);
        Example.exact(findings, "drawdown 1500 ft from the stream", "ft", "8.0687", beyond);
        findings.misprint(new Misprint(
                shammas2011("Example 3.8, p. 91-93"),
                "drawdown 1500 ft from the stream",
                "2.56 ft, 0.78 m",
                "8.0687 ft",
                "The book takes 1500 ft, the distance to the stream, for the distance to the bore, which is 500 ft: with"
                        + " its own formula (Q/(2 pi T)) ln(2500/500) is 8.07 ft."));
    }

    private static void hundredDays(Findings findings) {
        double transmissivity = 2.63e-3 * SECONDS_A_DAY;
        double drawdown = new TheisSolution(transmissivity, 2.74e-4).drawdown(2.21e-2 * SECONDS_A_DAY, 0.305, 100);
        double u = 0.305 * 0.305 * 2.74e-4 / (4 * transmissivity * 100);
        Example.printed(findings, "u", "-", "2.80e-10", u);
        Example.exact(findings, "u", "-", "2.8043e-10", u);
        Example.printed(findings, "s", "m", "14.32", drawdown);
        Example.exact(findings, "s", "m", "14.322", drawdown);
    }

    /** 0.49 m at 1 min, 2.37 m at 100 min, t0 = 0.30 min, r = 68.58 m. */
    private static void straightLine(Findings findings) {
        CooperJacobSolution found =
                CooperJacobSolution.fromLine(2.21e-2 * SECONDS_A_DAY, 68.58, (2.37 - 0.49) / 2, 0.30 / MINUTES_A_DAY);
        Example.printed(findings, "T", "m²/s", "4.31e-3", found.transmissivity() / SECONDS_A_DAY);
        Example.exact(findings, "T", "m²/s", "0.0043079", found.transmissivity() / SECONDS_A_DAY);
        Example.printed(findings, "S", "-", "3.7e-5", found.storativity());
    }

    private static void threeBoresInMetres(Findings findings) {
        double transmissivity = 2.63e-3 * SECONDS_A_DAY;
        TheisSolution theis = new TheisSolution(transmissivity, 2.74e-4);
        double rate = 1.34 * 4 * Math.PI * transmissivity;
        List<PumpedBore> bores =
                List.of(new PumpedBore(0, 0, rate), new PumpedBore(75, 0, rate), new PumpedBore(150, 0, rate));
        String[] what = {"own drawdown", "A on B", "A on C"};
        double[] distances = {0.25, 75, 150};
        String[] printed = {"26.15", "10.86", "9.00"};
        for (int i = 0; i < distances.length; i++) {
            Example.printed(findings, what[i], "m", printed[i], theis.drawdown(rate, distances[i], 10));
        }
        Example.printed(findings, "total in an outer bore", "m", "46.01", theis.drawdown(bores, 0, 0.25, 10));
        Example.exact(findings, "total in an outer bore", "m", "46.012", theis.drawdown(bores, 0, 0.25, 10));
    }

    private static void korendijkLines(Findings findings) {
        CooperJacobSolution overTime = CooperJacobSolution.fromLine(788, 30, 0.375, 0.25 / MINUTES_A_DAY);
        Example.printed(findings, "T from drawdown over time at 30 m", "m²/d", "385", overTime.transmissivity());
        Example.fromGraph(findings, "S from drawdown over time at 30 m", "-", "1.7e-4", overTime.storativity());
        CooperJacobSolution overBoth = CooperJacobSolution.fromLine(788, 1, 0.33, 2.45e-4 / MINUTES_A_DAY);
        Example.printed(findings, "T from drawdown over t/r²", "m²/d", "437", overBoth.transmissivity());
        Example.printed(
                findings,
                "T from steady drawdown at 30 and 90 m",
                "m²/d",
                "370",
                ThiemSolution.fromDifference(788, 30, 90, 1.088 - 0.716).transmissivity());
        Example.printed(
                findings,
                "T from steady drawdown at 0.8 and 30 m",
                "m²/d",
                "396",
                ThiemSolution.fromDifference(788, 0.8, 30, 2.236 - 1.088).transmissivity());
    }

    /** Q = 9.3 m³/min, r = 187 m, match point W = 1, 1/u = 1, s = 2.20 m, t = 1.8 min. */
    private static void heath(Findings findings) {
        double transmissivity = 9.3 * MINUTES_A_DAY / (4 * Math.PI * 2.20);
        double storativity = 4 * transmissivity * 1.8 / MINUTES_A_DAY / (187.0 * 187.0);
        Example.printed(findings, "T", "m²/d", "485", transmissivity);
        Example.printed(findings, "S", "-", "7e-5", storativity);
        // At u = 1 the solution itself is W(1) times the s of the match point.
        Example.exact(
                findings,
                "s at the match point over W(1)",
                "m",
                "2.20",
                new TheisSolution(transmissivity, storativity).drawdown(9.3 * MINUTES_A_DAY, 187, 1.8 / MINUTES_A_DAY)
                        / WellFunction.of(1));
    }

    /** Q = 4.0e-3 m³/s, r = 55 m, match point W = 1, u = 1, s = 0.14 m, t = 250 s. */
    private static void freezeCherry(Findings findings) {
        double transmissivity = 4.0e-3 / (4 * Math.PI * 0.14);
        double storativity = 4 * transmissivity * 250 / (55.0 * 55.0);
        Example.printed(findings, "T", "m²/s", "0.0023", transmissivity);
        Example.printed(findings, "S", "-", "7.5e-4", storativity);
        Example.exact(
                findings,
                "s at the match point over W(1)",
                "m",
                "0.14",
                new TheisSolution(transmissivity, storativity).drawdown(4.0e-3, 55, 250) / WellFunction.of(1));
    }

    private static void fetter(Findings findings) {
        HantushJacobSolution solution = new HantushJacobSolution(0.73 * 5.2, 0.0035, 1.1 / 5.5e-5);
        double[] distances = {1.5, 5.5, 10, 25, 75, 150};
        String[] exact = {"4.0933", "2.572", "1.88", "0.87463", "0.079119", "0.00053519"};
        for (int i = 0; i < distances.length; i++) {
            Example.exact(
                    findings, "s at " + distances[i] + " m", "m", exact[i], solution.drawdown(28, distances[i], 1));
        }
    }

    private static void jenkins(Findings findings) {
        StreamDepletion depletion = new StreamDepletion(250, 2e-4, 600);
        Example.printed(findings, "q/Q", "-", "0.480", depletion.rateShare(depletion.depletionFactor()));
        Example.printed(findings, "v/(Qt)", "-", "0.280", depletion.volumeShare(depletion.depletionFactor()));
    }

    /** 20 L/s through 500 m of 150 mm, roughness 0.045 mm, at 20 °C; then 50 L/s through 200 mm. */
    private static void pipe(Findings findings) {
        double viscosity = 1.004e-6 * SECONDS_A_DAY;
        Pipe pipe = new Pipe(0.150, 500, 0.045e-3, viscosity);
        double discharge = 0.02 * SECONDS_A_DAY;
        Example.exact(findings, "Reynolds number", "-", "169089", pipe.reynolds(discharge));
        // The loss of a pipe counts the velocity head at its end as well; twice the length has that once, too.
        double friction = new Pipe(0.150, 1000, 0.045e-3, viscosity).loss(discharge) - pipe.loss(discharge);
        Example.exact(findings, "head lost by friction", "m", "3.937", friction);
        Example.exact(
                findings,
                "velocity of 50 L/s in 200 mm",
                "m/s",
                "1.5915",
                new Pipe(0.200, 500, 0.045e-3, viscosity).velocity(0.05 * SECONDS_A_DAY) / SECONDS_A_DAY);
    }

    /**
     * 100, 151 and 199 gallons a minute, 3.35, 5.14 and 6.86 ft. B and C of the straight line through s/Q (Hantush and
     * Bierschenk), recomputed outside the project, are given to the loss of a bore, which must give the steps back; C between
     * pairs of steps as Jacob takes it is a matter of the printed drawdowns alone and scatters about that of the line.
     */
    private static void stepTest(Findings findings) {
        WellLoss loss = new WellLoss(1.8189e-3, 1.0083e-7);
        double[] gallons = {100, 151, 199};
        String[] feet = {"3.35", "5.14", "6.86"};
        double[] discharge = new double[gallons.length];
        double[] drawdown = new double[gallons.length];
        for (int i = 0; i < gallons.length; i++) {
            discharge[i] = gallons[i] * CUBIC_FEET_A_DAY_PER_GALLON_A_MINUTE * CUBIC_METRES_PER_CUBIC_FOOT;
            drawdown[i] = loss.at(discharge[i]) / METRES_PER_FOOT;
            Example.printed(findings, "s at " + gallons[i] + " gallons a minute", "ft", feet[i], drawdown[i]);
        }
        double first = (drawdown[1] - drawdown[0]) / (discharge[1] - discharge[0]) - drawdown[0] / discharge[0];
        double jacob = first / discharge[1] * METRES_PER_FOOT;
        Example.exact(findings, "C between steps 1 and 2 of the line, after Jacob", "d²/m⁵", "1.0083e-7", jacob);
    }

    /** Last of six steps of 180 min: 5,019 m³/d and 20.01 m. */
    private static void clarkStepTest(Findings findings) {
        Example.printed(findings, "s at 5,019 m³/d", "m", "20.01", new WellLoss(3.26e-3, 1.45e-7).at(5019));
    }
}

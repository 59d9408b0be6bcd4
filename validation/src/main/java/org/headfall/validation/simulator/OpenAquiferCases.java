package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.headfall.solver.analytic.AnisotropicTheisSolution;
import org.headfall.solver.analytic.CooperJacobSolution;
import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.ValidationCase;

/** Bores in an aquifer without visible sides, leakage or zones. */
final class OpenAquiferCases {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RATE = 2000;
    private static final double CELL = 100;
    private static final int EQUAL_CELLS = 22;

    private static final Source THEIS =
            new Source("Theis", 1935, "Transactions AGU 16, 519-524", "equation of s with W(u)", Standing.QUOTED);

    private OpenAquiferCases() {}

    static List<ValidationCase> all() {
        List<ValidationCase> cases = new ArrayList<>();
        cases.add(theis("theis-centre", "bore at the centre of its cell", List.of(Placement.CENTRE), FAST));
        cases.add(theis("theis-anywhere", "bore anywhere in its cell", Placement.anywhere(), FAST));
        cases.add(earlyTheis());
        cases.add(cooperJacob());
        cases.add(recovery());
        cases.add(variableRates());
        cases.add(anisotropic());
        return cases;
    }

    private static RectilinearGrid grid(double reach) {
        Axis axis = new Spacing(CELL, 1.1, reach).bothWays(EQUAL_CELLS);
        return new RectilinearGrid(axis, axis);
    }

    private static Bore bore(Placement place, Schedule rate) {
        return Field.pumped("A", place.x() * CELL, place.y() * CELL, rate);
    }

    private static FlowProblem problem(RectilinearGrid grid, Bore bore) {
        return Field.problem(Aquifer.homogeneous(grid, T, S), Optional.empty(), List.of(), bore);
    }

    private static DrawdownCheck.ClosedForm around(Bore bore, RateResponse response) {
        return (x, y, day) -> response.at(Math.hypot(x - bore.x(), y - bore.y()), day);
    }

    /** Drawdown at a distance and a day. */
    @FunctionalInterface
    private interface RateResponse {
        double at(double distance, double day);
    }

    private static ValidationCase theis(String name, String where, List<Placement> places, ValidationCase.Pace pace) {
        return new ValidationCase(
                name,
                "Theis: constant rate, " + where,
                Part.SIMULATOR,
                List.of(THEIS),
                "Time stepping, grid and the step from the grid to the bore give the drawdown of a line sink over three"
                        + " decades of time, from the bore out to 20 cells.",
                "Times before 20 S cell²/T = 0.2 d (see the case of early times); water in the casing; T that varies.",
                pace,
                findings -> constantRate(places, Field.days(0.2, 200, 10), findings));
    }

    private static ValidationCase earlyTheis() {
        return new ValidationCase(
                "theis-early",
                "Theis: the first moments after pumping begins, within what a grid can carry, then within the bars",
                Part.SIMULATOR,
                List.of(THEIS),
                "At the bore the bar holds from S cell²/T = 0.01 d on, farther out from 12 times that. Before, heads two"
                        + " cells off and farther are nowhere wrong by more than 0.17 (cell/r)² Q/(4 pi T).",
                "The bar of 0.5 % or 1 mm away from the bore before 12 S cell²/T: it is missed there, as the remark says."
                        + " Waves shorter than some cells do not spread evenly on a grid. The limit is its leading error"
                        + " (cell²/12)(d⁴s/dx⁴ + d⁴s/dy⁴), integrated over time; smaller cells see earlier.",
                FAST,
                OpenAquiferCases::firstMoments);
    }

    private static void firstMoments(Findings findings) {
        double unit = S * CELL * CELL / T;
        double barsFrom = 12 * unit;
        DrawdownCheck.AwayBar bar = (drawdown, distance, day) -> day >= barsFrom
                ? Bars.away(drawdown)
                : Bars.ofGrid(drawdown, RATE / (4 * Math.PI * T), distance / CELL);
        double[] days = {unit, 2 * unit, 4 * unit, 8 * unit, barsFrom, 16 * unit};
        for (Placement place : List.of(Placement.CENTRE, Placement.anywhere().get(1))) {
            DrawdownCheck check = theisCheck(place);
            List<State> states = Field.run(check.problem(), days);
            check.compare(states, bar, findings);
            findings.plot(check.overTime(states, true));
        }
        List<Comparison> early = findings.comparisons().stream()
                .filter(comparison -> Bars.isOfGrid(comparison.tolerance()))
                .toList();
        double worst = early.stream()
                .mapToDouble(comparison -> Math.abs(comparison.difference())
                        / Bars.away(comparison.published()).allowed())
                .max()
                .orElse(0);
        long missed = early.stream()
                .filter(comparison -> Math.abs(comparison.difference())
                        > Bars.away(comparison.published()).allowed())
                .count();
        findings.note(
                "Before day " + barsFrom + ", " + missed + " numbers away from the bore miss the bar of 0.5 % or 1 mm,"
                        + " by up to " + Figures.significant(worst, 2) + " times it.");
        findings.note("Cells of 100 m, seed of the places " + Placement.SEED);
    }

    private static void constantRate(List<Placement> places, double[] days, Findings findings) {
        for (Placement place : places) {
            DrawdownCheck check = theisCheck(place);
            List<State> states = Field.run(check.problem(), days);
            check.compare(states, findings);
            findings.plot(check.overTime(states, true));
        }
        findings.note("Cells of 100 m, seed of the places " + Placement.SEED);
    }

    private static DrawdownCheck theisCheck(Placement place) {
        Bore bore = bore(place, Schedule.constant(RATE));
        TheisSolution theis = new TheisSolution(T, S);
        return new DrawdownCheck(
                problem(grid(60_000), bore),
                around(bore, (r, day) -> theis.drawdown(RATE, r, day)),
                "Theis",
                place.toString());
    }

    private static ValidationCase cooperJacob() {
        Source source = new Source(
                "Cooper and Jacob",
                1946,
                "Transactions AGU 27, 526-534",
                "straight line, equations 4-3 to 4-6 of Davis (2010)",
                Standing.QUOTED);
        return new ValidationCase(
                "cooper-jacob",
                "Cooper and Jacob: the straight line, and T and S read from it",
                Part.SIMULATOR,
                List.of(source),
                "Late drawdown follows the straight line against the logarithm of time, so that a pumping test made with"
                        + " the simulator gives back the T and S that were put in.",
                "Nothing for u above 0.001; one T and S.",
                FAST,
                OpenAquiferCases::straightLine);
    }

    private static void straightLine(Findings findings) {
        RectilinearGrid grid = grid(150_000);
        Bore bore = bore(Placement.CENTRE, Schedule.constant(RATE));
        CooperJacobSolution line = new CooperJacobSolution(T, S);
        var check = new DrawdownCheck(
                problem(grid, bore), around(bore, (r, day) -> line.drawdown(RATE, r, day)), "straight line", "centre");
        // u = r² S/(4 T t) <= 0.001 at 300 m from day 22.5 on.
        List<State> states = Field.run(check.problem(), Field.days(23, 500, 9));
        int cell = grid.locate(bore.x() + 3 * CELL, bore.y());
        double distance = grid.centreX(cell) - bore.x();
        SimpleRegression regression = new SimpleRegression();
        for (State state : states) {
            double expected = line.drawdown(RATE, distance, state.day());
            findings.compare(Comparison.withFormula(
                    "drawdown at 300 m, day " + Math.round(state.day()),
                    "m",
                    expected,
                    -state.head()[cell],
                    Bars.away(expected)));
            double inBore = line.drawdown(RATE, Field.RADIUS, state.day());
            findings.compare(Comparison.withFormula(
                    "drawdown in the bore, day " + Math.round(state.day()),
                    "m",
                    inBore,
                    -state.wallHead()[0],
                    Bars.atBore(inBore)));
            regression.addData(Math.log10(state.day()), -state.head()[cell]);
        }
        double intercept = Math.pow(10, -regression.getIntercept() / regression.getSlope());
        CooperJacobSolution found = CooperJacobSolution.fromLine(RATE, distance, regression.getSlope(), intercept);
        findings.compare(Comparison.withFormula(
                "T from the line at 300 m",
                "m²/d",
                T,
                found.transmissivity(),
                Bars.derived(0.01 * T, "0.5 % up at one end of the line and down at the other")));
        findings.compare(Comparison.withFormula(
                "S from the line at 300 m",
                "-",
                S,
                found.storativity(),
                Bars.derived(0.05 * S, "the intercept lies eight times Q/(4 pi T) below the drawdowns")));
        findings.plot(check.overTime(states, false));
    }

    private static ValidationCase recovery() {
        return new ValidationCase(
                "recovery",
                "Theis: recovery after pumping, bore at the centre and anywhere in its cell",
                Part.SIMULATOR,
                List.of(new Source("Theis", 1935, "Transactions AGU 16, 519-524", "recovery formula", Standing.QUOTED)),
                "The run restarts its steps when the pump stops and follows residual drawdown from a quarter of an hour on.",
                "Nothing on storage that differs between pumping and recovery.",
                FAST,
                findings -> {
                    stepped(
                            Placement.CENTRE,
                            new double[] {0, 10},
                            new double[] {RATE, 0},
                            new double[] {2, 5, 9.9, 10.01, 10.03, 10.1, 10.3, 11, 13, 20, 40},
                            findings);
                    stepped(
                            Placement.anywhere().get(1),
                            new double[] {0, 10},
                            new double[] {RATE, 0},
                            new double[] {2, 5, 9.9, 10.01, 10.03, 10.1, 10.3, 11, 13, 20, 40},
                            findings);
                });
    }

    private static ValidationCase variableRates() {
        return new ValidationCase(
                "variable-rates",
                "Rates that change in steps, by superposition in time",
                Part.SIMULATOR,
                List.of(new Source(
                        "Kruseman and de Ridder",
                        1990,
                        "Analysis and Evaluation of Pumping Test Data, 2nd ed.",
                        "superposition of Theis solutions",
                        Standing.MEMORY)),
                "Steps up, down, to nothing, and injection are each met on their day, at the centre and elsewhere in the"
                        + " cell.",
                "Rates that run straight between dates; the first 50 S cell²/T = 0.5 d after a change.",
                FAST,
                findings -> {
                    double[] days = {0, 2, 5, 9, 14};
                    double[] rates = {800, 2500, 400, -600, 1500};
                    double[] recorded = {0.5, 1.9, 2.5, 3, 4.9, 5.5, 7, 9.5, 12, 14.5, 20, 30};
                    stepped(Placement.CENTRE, days, rates, recorded, findings);
                    stepped(Placement.anywhere().get(2), days, rates, recorded, findings);
                });
    }

    /** Theis, superposed for each jump of the rate of a bore. */
    private record SteppedTheis(Bore bore, StepSchedule schedule, TheisSolution theis)
            implements DrawdownCheck.ClosedForm {

        @Override
        public double at(double x, double y, double day) {
            double distance = Math.hypot(x - bore.x(), y - bore.y());
            return Superposition.of(schedule, day, since -> theis.drawdown(1, distance, since));
        }

        @Override
        public double superposedAtWall(Bore wall, double day) {
            double sum = 0;
            double rate = 0;
            for (double jump : schedule.jumps()) {
                double since = day - jump;
                double change = schedule.at(jump) - rate;
                rate += change;
                sum += since > 0 ? Math.abs(theis.drawdown(change, wall.screenRadius(), since)) : 0;
            }
            return sum;
        }
    }

    private static void stepped(Placement place, double[] days, double[] rates, double[] recorded, Findings findings) {
        RectilinearGrid grid = grid(60_000);
        StepSchedule schedule = new StepSchedule(days, rates);
        Bore bore = bore(place, schedule);
        TheisSolution theis = new TheisSolution(T, S);
        var check = new DrawdownCheck(
                problem(grid, bore), new SteppedTheis(bore, schedule, theis), "Theis, superposed", place.toString());
        List<State> states = Field.run(check.problem(), recorded);
        check.compare(states, findings);
        findings.plot(check.overEvenTime(states));
    }

    private static ValidationCase anisotropic() {
        return new ValidationCase(
                "anisotropic",
                "Papadopulos: T sixteen times larger along one axis",
                Part.SIMULATOR,
                List.of(new Source(
                        "Papadopulos",
                        1965,
                        "IASH symposium of Dubrovnik, 21-31",
                        "equation for axes along x and y; bore as an ellipse in the equivalent plane",
                        Standing.MEMORY)),
                "Conductances of both directions and the step to the bore are right where T depends on direction.",
                "Axes that are turned against the grid, which the simulator does not offer; times before 20 S cell²/T of"
                        + " the smaller T, 0.8 d.",
                FAST,
                findings -> {
                    anisotropic(Placement.CENTRE, findings);
                    anisotropic(Placement.anywhere().get(0), findings);
                });
    }

    private static void anisotropic(Placement place, Findings findings) {
        RectilinearGrid grid = grid(120_000);
        Bore bore = bore(place, Schedule.constant(RATE));
        AnisotropicTheisSolution solution = AnisotropicTheisSolution.alongAxes(800, 50, S);
        FlowProblem problem = Field.problem(Field.anisotropic(grid, 800, 50, S), Optional.empty(), List.of(), bore);
        var closedForm = new DrawdownCheck.ClosedForm() {
            @Override
            public double at(double x, double y, double day) {
                return solution.drawdown(RATE, x - bore.x(), y - bore.y(), day);
            }

            @Override
            public double atWall(Bore wall, double day) {
                return solution.drawdownInBore(RATE, wall.screenRadius(), day);
            }
        };
        var check = new DrawdownCheck(problem, closedForm, "Papadopulos", place.toString());
        List<State> states = Field.run(problem, Field.days(1, 300, 10));
        check.compare(states, findings);
        findings.plot(check.overTime(states, true));
    }
}

package org.headfall.validation.simulator;

import static org.headfall.validation.check.ValidationCase.Pace.FAST;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.side.HalfPlaneSolution;
import org.headfall.solver.analytic.side.PeriodicSideHead;
import org.headfall.solver.analytic.side.QuarterPlaneSolution;
import org.headfall.solver.analytic.side.SideCondition;
import org.headfall.solver.analytic.side.SteppedSideHead;
import org.headfall.solver.analytic.side.StreamDepletion;
import org.headfall.solver.analytic.side.StripSolution;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
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

/** Straight sides: bores beside them, what a stream loses, and heads that change along them. */
final class SideCases {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RATE = 2000;
    private static final double CELL = 100;
    private static final double REACH = 80_000;
    private static final TheisSolution THEIS = new TheisSolution(T, S);

    private static final Source IMAGES = new Source(
            "Ferris and others",
            1962,
            "Theory of aquifer tests, USGS Water-Supply Paper 1536-E",
            "image-well theory",
            Standing.MEMORY);

    private SideCases() {}

    static List<ValidationCase> all() {
        return List.of(
                besideSides(
                        "side-fixed-head",
                        "A straight side of fixed head, by an image that puts water in",
                        true,
                        false,
                        Double.POSITIVE_INFINITY,
                        new HalfPlaneSolution(THEIS, SideCondition.FIXED_HEAD)),
                besideSides(
                        "side-no-flow",
                        "A straight side that no water crosses, by an image that takes water",
                        false,
                        false,
                        Double.POSITIVE_INFINITY,
                        new HalfPlaneSolution(THEIS, SideCondition.NO_FLOW)),
                besideSides(
                        "strip",
                        "A strip between a side of fixed head and one without flow, by an endless row of images",
                        true,
                        false,
                        4000,
                        new StripSolution(THEIS, 4000, SideCondition.FIXED_HEAD, SideCondition.NO_FLOW)),
                besideSides(
                        "corner",
                        "A corner of a side of fixed head and one without flow, by three images",
                        true,
                        true,
                        Double.POSITIVE_INFINITY,
                        new QuarterPlaneSolution(THEIS, SideCondition.FIXED_HEAD, SideCondition.NO_FLOW)),
                closeToSides(),
                streamDepletion(),
                steppedHead(),
                periodicHead());
    }

    /** A case with a bore eight to nine cells from the western side, and as far from the southern one in a corner. */
    private static ValidationCase besideSides(
            String name, String title, boolean heldInTheWest, boolean corner, double width, DrawdownField solution) {
        return new ValidationCase(
                name,
                title,
                Part.SIMULATOR,
                List.of(IMAGES),
                "Sides act at their face, half a cell beyond the last centre, while the wave passes and after.",
                "Sides that are not straight, or cut through cells; a bore within six cells of its side (see side-close); times before"
                        + " 50 S cell²/T = 0.5 d.",
                FAST,
                findings -> {
                    for (Placement place :
                            List.of(Placement.CENTRE, Placement.anywhere().get(2))) {
                        besideSides(place, 8, heldInTheWest, corner, width, solution, findings);
                    }
                });
    }

    private static ValidationCase closeToSides() {
        return new ValidationCase(
                "side-close",
                "Bores close to a side: in a cell along one that no water crosses, two cells from a fixed head",
                Part.SIMULATOR,
                List.of(IMAGES),
                "The near field of a bore is mirrored at straight sides, however near they are.",
                "Bores in a cell of a side of fixed head, which tests of the solver hold to the same bar at the bore and at points, while"
                        + " heads of the cells along the side are off by up to 10 % of drawdown two cells from the bore. Sides that"
                        + " are not straight or change within two cells, far heads close by, a bore within some 5 % of a cell from"
                        + " a side of fixed head: there drawdown is up to 60 % wrong. The report of a run names such bores.",
                FAST,
                findings -> {
                    HalfPlaneSolution closed = new HalfPlaneSolution(THEIS, SideCondition.NO_FLOW);
                    HalfPlaneSolution held = new HalfPlaneSolution(THEIS, SideCondition.FIXED_HEAD);
                    besideSides(new Placement(0.03, 0.4), 0, false, false, Double.POSITIVE_INFINITY, closed, findings);
                    for (Placement place : List.of(Placement.CENTRE, new Placement(0.1, 0.8))) {
                        besideSides(place, 0, false, false, Double.POSITIVE_INFINITY, closed, findings);
                        besideSides(place, 1, false, false, Double.POSITIVE_INFINITY, closed, findings);
                        besideSides(place, 2, true, false, Double.POSITIVE_INFINITY, held, findings);
                    }
                });
    }

    private static void besideSides(
            Placement place,
            int column,
            boolean heldInTheWest,
            boolean corner,
            double width,
            DrawdownField solution,
            Findings findings) {
        Spacing spacing = new Spacing(CELL, 1.1, REACH);
        Axis x = Double.isFinite(width) ? Axis.uniform(0, CELL, (int) Math.round(width / CELL)) : spacing.fromSide(32);
        Axis y = corner ? spacing.fromSide(32) : spacing.bothWays(22);
        RectilinearGrid grid = new RectilinearGrid(x, y);
        List<OuterBoundary> rim = new ArrayList<>();
        if (heldInTheWest) {
            rim.add(Field.held("river", Side.WEST, grid, Schedule.constant(0)));
        }
        double fromSouth = corner ? 8 * CELL : 0;
        Bore bore =
                Field.pumped("A", (column + place.x()) * CELL, fromSouth + place.y() * CELL, Schedule.constant(RATE));
        PumpedBore published = new PumpedBore(bore.x(), bore.y(), RATE);
        FlowProblem problem = Field.problem(Aquifer.homogeneous(grid, T, S), Optional.empty(), rim, bore);
        var check = new DrawdownCheck(
                problem,
                (px, py, day) -> solution.drawdown(published, px, py, day),
                "images",
                place + (heldInTheWest ? ", fixed head " : ", no flow ") + Math.round(bore.x()) + " m off");
        List<State> states = Field.run(problem, Field.days(0.5, 100, 10));
        check.compare(states, findings);
        findings.plot(check.overTime(states, false));
    }

    private static ValidationCase streamDepletion() {
        return new ValidationCase(
                "stream-depletion",
                "Glover and Balmer: what a bore takes from a stream, as rate and as volume",
                Part.SIMULATOR,
                List.of(
                        new Source(
                                "Glover and Balmer",
                                1954,
                                "Transactions AGU 35(3), 468-470",
                                "q/Q = erfc",
                                Standing.QUOTED),
                        new Source(
                                "Jenkins",
                                1968,
                                "USGS Techniques of Water-Resources Investigations, Book 4, Chapter D1",
                                "Table 1",
                                Standing.READ)),
                "The water balance books what passes a side of fixed head in the right amount at the right time, during"
                        + " pumping and after it.",
                "A stream with a bed of its own resistance, or narrower than the aquifer is deep.",
                FAST,
                SideCases::depletion);
    }

    private static void depletion(Findings findings) {
        Spacing spacing = new Spacing(CELL, 1.1, REACH);
        RectilinearGrid grid = new RectilinearGrid(spacing.fromSide(32), spacing.bothWays(22));
        Placement place = Placement.anywhere().get(0);
        double distance = (8 + place.x()) * CELL;
        StreamDepletion solution = new StreamDepletion(T, S, distance);
        double factor = solution.depletionFactor();
        Bore bore = Field.pumped("A", distance, place.y() * CELL, Schedule.constant(RATE));
        FlowProblem problem = Field.problem(
                Aquifer.homogeneous(grid, T, S),
                Optional.empty(),
                List.of(Field.held("river", Side.WEST, grid, Schedule.constant(0))),
                bore);
        double[] shares = {0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 0.8, 1, 1.1, 1.5, 1.6, 2, 2.1, 4, 4.2, 10, 10.5, 30, 31};
        double[] days = new double[shares.length];
        for (int i = 0; i < days.length; i++) {
            days[i] = shares[i] * factor;
        }
        List<State> states = Field.run(problem, days);
        double taken = 0;
        double before = 0;
        double[] ours = new double[days.length];
        for (int i = 0; i < days.length; i++) {
            double since = states.get(i).inflow("river");
            taken += since;
            double expected = solution.volumeShare(days[i]);
            ours[i] = taken / (RATE * days[i]);
            findings.compare(Comparison.withFormula(
                    "v/(Qt) at t/F = " + shares[i], "-", expected, ours[i], bookkeeping(expected)));
            double expectedRate = (days[i] * expected - before * solution.volumeShare(before)) / (days[i] - before);
            findings.compare(Comparison.withFormula(
                    "mean q/Q since the day before, up to t/F = " + shares[i],
                    "-",
                    expectedRate,
                    since / (RATE * (days[i] - before)),
                    bookkeeping(expectedRate)));
            before = days[i];
        }
        double[] lineShares = Field.days(shares[0], shares[shares.length - 1], 100);
        double[] line = new double[lineShares.length];
        for (int i = 0; i < line.length; i++) {
            line[i] = solution.volumeShare(lineShares[i] * factor);
        }
        findings.plot(new Plot(
                "volume from the stream",
                Plot.Scale.logarithmic("t/F, F = a² S/T"),
                Plot.Scale.linear("v/(Qt)"),
                List.of(
                        new Series("Glover and Balmer", Series.Kind.PUBLISHED, 0, lineShares, line),
                        new Series("Headfall, water balance", Series.Kind.OURS, 0, shares, ours))));
    }

    private static Tolerance bookkeeping(double share) {
        return new Tolerance(
                Math.max(0.01 * share, 0.001), "1 % of the share or 0.1 % of what is pumped, whichever is larger");
    }

    private static ValidationCase steppedHead() {
        return new ValidationCase(
                "side-head-step",
                "A sudden change of head along a side, in one dimension",
                Part.SIMULATOR,
                List.of(new Source(
                        "Carslaw and Jaeger",
                        1959,
                        "Conduction of heat in solids, 2nd ed.",
                        "section 2.5, erfc",
                        Standing.MEMORY)),
                "A jump of a boundary head spreads by the error function and brings in the right volume of water.",
                "The first two cells, whose half-cell distance to the side cannot follow the first moments.",
                FAST,
                SideCases::step);
    }

    private static void step(Findings findings) {
        double change = 5;
        RectilinearGrid grid =
                new RectilinearGrid(new Spacing(CELL / 2, 1.1, REACH).fromSide(120), Axis.uniform(0, CELL, 1));
        SteppedSideHead solution = new SteppedSideHead(T, S);
        FlowProblem problem = Field.problem(
                Aquifer.homogeneous(grid, T, S),
                Optional.empty(),
                List.of(Field.held("sea", Side.WEST, grid, Schedule.constant(change))));
        double[] days = Field.days(0.2, 100, 8);
        List<State> states = Field.run(problem, days);
        double entered = 0;
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            State state = states.get(i);
            for (int cell : new int[] {2, 4, 8, 16, 32, 64, 100}) {
                double expected = solution.headChange(change, grid.centreX(cell), state.day());
                findings.compare(Comparison.withFormula(
                        "rise at " + Math.round(grid.centreX(cell)) + " m, day " + Figures.significant(days[i], 3),
                        "m",
                        expected,
                        state.head()[cell],
                        Bars.away(expected)));
            }
            entered += state.inflow("sea") / CELL;
            // The volume is the integral of the published inflow, dh sqrt(T S/(pi t)).
            double volume = 2 * state.day() * solution.inflow(change, state.day());
            findings.compare(Comparison.withFormula(
                    "volume entered, day " + Figures.significant(days[i], 3),
                    "m²",
                    volume,
                    entered,
                    Tolerance.share(0.01, volume, "1 %: the half cell at the side")));
            if (i % 3 == 0) {
                addProfile(series, grid, solution, state, change, i / 3);
            }
        }
        findings.plot(new Plot(
                "rise with distance from the side",
                Plot.Scale.linear("distance from the side (m)"),
                Plot.Scale.linear("rise (m)"),
                series));
    }

    private static void addProfile(
            List<Series> series,
            RectilinearGrid grid,
            SteppedSideHead solution,
            State state,
            double change,
            int pattern) {
        int cells = 120;
        double[] distances = new double[cells];
        double[] expected = new double[cells];
        double[] few = new double[cells / 8];
        double[] ours = new double[cells / 8];
        for (int cell = 0; cell < cells; cell++) {
            distances[cell] = grid.centreX(cell);
            expected[cell] = solution.headChange(change, distances[cell], state.day());
            if (cell % 8 == 2) {
                few[cell / 8] = distances[cell];
                ours[cell / 8] = state.head()[cell];
            }
        }
        String day = "day " + Figures.significant(state.day(), 3);
        series.add(new Series("error function, " + day, Series.Kind.PUBLISHED, pattern, distances, expected));
        series.add(new Series("Headfall, " + day, Series.Kind.OURS, pattern, few, ours));
    }

    private static ValidationCase periodicHead() {
        return new ValidationCase(
                "side-head-periodic",
                "Ferris: a head along a side that rises and falls once a year, its amplitude and lag inland",
                Part.SIMULATOR,
                List.of(new Source(
                        "Ferris", 1951, "IASH Publication 33, 148-155", "amplitude and lag", Standing.MEMORY)),
                "A boundary head that follows straight lines between dates sends the right wave inland: no damping and no"
                        + " delay of the simulator's own.",
                "Waves shorter than a few cells.",
                FAST,
                SideCases::wave);
    }

    private static void wave(Findings findings) {
        double period = 365.25;
        double amplitude = 3;
        RectilinearGrid grid =
                new RectilinearGrid(new Spacing(500, 1.1, 150_000).fromSide(60), Axis.uniform(0, 500, 1));
        PeriodicSideHead solution = new PeriodicSideHead(T, S, period);
        int pieces = 192;
        double[] scheduleDays = new double[2 * pieces + 1];
        double[] heads = new double[scheduleDays.length];
        for (int i = 0; i < heads.length; i++) {
            scheduleDays[i] = i * period / pieces;
            heads[i] = amplitude * Math.sin(2 * Math.PI * i / pieces);
        }
        FlowProblem problem = Field.problem(
                Aquifer.homogeneous(grid, T, S),
                Optional.empty(),
                List.of(Field.held("sea", Side.WEST, grid, new LinearSchedule(scheduleDays, heads))));
        double[] start = new double[grid.cellCount()];
        for (int cell = 0; cell < start.length; cell++) {
            start[cell] = solution.headChange(amplitude, grid.centreX(cell), 0);
        }
        // Even days of the second year: their first harmonic is amplitude and lag.
        int samples = 24;
        double[] days = new double[samples];
        for (int i = 0; i < samples; i++) {
            days[i] = period * (1 + (i + 0.5) / samples);
        }
        List<State> states = Field.run(problem, start, days);
        List<Series> series = new ArrayList<>();
        int drawn = 0;
        for (int cell : new int[] {2, 8, 16, 30, 50}) {
            double distance = grid.centreX(cell);
            double sine = 0;
            double cosine = 0;
            for (State state : states) {
                double angle = 2 * Math.PI * state.day() / period;
                sine += 2 * state.head()[cell] * Math.sin(angle) / samples;
                cosine += 2 * state.head()[cell] * Math.cos(angle) / samples;
            }
            String place = " at " + Math.round(distance) + " m";
            double expected = amplitude * solution.amplitudeRatio(distance);
            findings.compare(Comparison.withFormula(
                    "amplitude" + place, "m", expected, Math.hypot(sine, cosine), Bars.away(expected)));
            double lag = Math.atan2(-cosine, sine) * period / (2 * Math.PI);
            findings.compare(Comparison.withFormula(
                    "lag" + place,
                    "d",
                    solution.lag(distance),
                    lag < 0 ? lag + period : lag,
                    Bars.derived(
                            Bars.away(expected).allowed() / expected * period / (2 * Math.PI),
                            "the time in which the head passes through that much at its mean")));
            if (drawn < 4) {
                addWave(series, solution, amplitude, distance, states, cell, drawn++);
            }
        }
        findings.plot(
                new Plot("head in the second year", Plot.Scale.linear("days"), Plot.Scale.linear("head (m)"), series));
    }

    private static void addWave(
            List<Series> series,
            PeriodicSideHead solution,
            double amplitude,
            double distance,
            List<State> states,
            int cell,
            int pattern) {
        double[] days = new double[100];
        double[] heads = new double[days.length];
        double first = states.get(0).day();
        double last = states.get(states.size() - 1).day();
        for (int i = 0; i < days.length; i++) {
            days[i] = first + (last - first) * i / (days.length - 1);
            heads[i] = solution.headChange(amplitude, distance, days[i]);
        }
        String place = Math.round(distance) + " m";
        series.add(new Series("Ferris, " + place, Series.Kind.PUBLISHED, pattern, days, heads));
        series.add(new Series(
                "Headfall, " + place,
                Series.Kind.OURS,
                pattern,
                states.stream().mapToDouble(State::day).toArray(),
                states.stream().mapToDouble(state -> state.head()[cell]).toArray()));
    }
}

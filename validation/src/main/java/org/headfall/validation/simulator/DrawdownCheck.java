package org.headfall.validation.simulator;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Plot;
import org.headfall.validation.check.Series;
import org.headfall.validation.check.Tolerance;

/**
 * Compares the drawdown of a run that began level at zero with a closed form: at the bores, at the centres of cells around
 * the first of them, where the heads of cells are those that maps show, and at a point somewhere in each of these cells,
 * where head is that of a protected point.
 *
 * @param problem what was run
 * @param expected the closed form
 * @param published what the closed form is called in plots
 * @param label words in front of every comparison, such as where the bore stands
 */
record DrawdownCheck(FlowProblem problem, ClosedForm expected, String published, String label) {

    private static final int LINE_POINTS = 200;

    /** Cells looked at, counted from the cell of the bore. */
    private static final int[][] STEPS = {
        {2, 0}, {0, -2}, {-3, 0}, {2, 2}, {0, 4}, {-4, 3}, {6, -2}, {8, 8}, {-12, 1}, {3, 16}, {18, -9}
    };

    /** Cells drawn in plots: the first that are far enough from the bore of these. */
    private static final int[] DRAWN = {2, 6, 9};

    /** A closed form. */
    interface ClosedForm {

        /**
         * Drawdown (m).
         *
         * @param x easting (m)
         * @param y northing (m)
         * @param day time (d)
         */
        double at(double x, double y, double day);

        /** Drawdown at the wall of a bore (m). */
        default double atWall(Bore bore, double day) {
            return at(bore.x() + bore.screenRadius(), bore.y(), day);
        }

        /** Sum of the drawdowns and rises at the wall of a bore that superposition adds up there, each as positive (m). */
        default double superposedAtWall(Bore bore, double day) {
            return Math.abs(atWall(bore, day));
        }
    }

    /** How near to the closed form heads have to be away from the bores. */
    @FunctionalInterface
    interface AwayBar {

        /**
         * The tolerance.
         *
         * @param drawdown drawdown by the closed form (m)
         * @param distance distance from the first bore (m)
         * @param day time (d)
         */
        Tolerance of(double drawdown, double distance, double day);
    }

    /** Compares all recorded days. */
    void compare(List<State> states, Findings findings) {
        compare(states, (drawdown, distance, day) -> Bars.away(drawdown), findings);
    }

    /** Compares all recorded days with a bar of its own away from the bores. */
    void compare(List<State> states, AwayBar bar, Findings findings) {
        List<Point> points = points();
        for (State state : states) {
            for (int bore = 0; bore < problem.bores().size(); bore++) {
                compareAtBore(state, bore, findings);
            }
            for (int cell : cells()) {
                compareInCell(state, cell, bar, findings);
            }
            for (Point point : points) {
                compareAtPoint(state, point, bar, findings);
            }
        }
    }

    /** A point that takes no water, with its head. */
    private record Point(double x, double y, ObservedHead head) {}

    /** One point in each cell looked at, each elsewhere in it, as far from bores as the bars ask. */
    private List<Point> points() {
        Aquifer aquifer = problem.aquifer();
        RectilinearGrid grid = aquifer.grid();
        List<NearField> bores = problem.nearFields();
        List<Placement> places = Placement.anywhere();
        List<Point> points = new ArrayList<>();
        int next = 0;
        for (int cell : cells()) {
            Placement place = places.get(next++ % places.size());
            double x = grid.centreX(cell) + (place.x() - 0.5) * grid.x().width(grid.column(cell));
            double y = grid.centreY(cell) + (place.y() - 0.5) * grid.y().width(grid.row(cell));
            if (clear(x, y)) {
                points.add(new Point(x, y, new ObservedHead(aquifer, x, y, bores)));
            }
        }
        return points;
    }

    private void compareAtPoint(State state, Point point, AwayBar bar, Findings findings) {
        double distance = distance(problem.bores().get(0), point.x(), point.y());
        double drawdown = expected.at(point.x(), point.y(), state.day());
        findings.compare(Comparison.withFormula(
                label + ", drawdown at a point "
                        + Figures.significant(distance, 4)
                        + " m off, day " + Figures.significant(state.day(), 4),
                "m",
                drawdown,
                -point.head().at(state.head(), state.rate()),
                bar.of(drawdown, distance, state.day())));
    }

    private void compareAtBore(State state, int index, Findings findings) {
        Bore bore = problem.bores().get(index);
        double drawdown = expected.atWall(bore, state.day());
        findings.compare(Comparison.withFormula(
                label + ", drawdown in bore " + bore.name() + ", day " + Figures.significant(state.day(), 4),
                "m",
                drawdown,
                -state.wallHead()[index],
                Bars.atBore(expected.superposedAtWall(bore, state.day()))));
    }

    private void compareInCell(State state, int cell, AwayBar bar, Findings findings) {
        RectilinearGrid grid = problem.aquifer().grid();
        double x = grid.centreX(cell);
        double y = grid.centreY(cell);
        double drawdown = expected.at(x, y, state.day());
        findings.compare(Comparison.withFormula(
                label + ", drawdown in the cell " + distanceWords(cell) + " off, day "
                        + Figures.significant(state.day(), 4),
                "m",
                drawdown,
                -state.head()[cell],
                bar.of(drawdown, distance(problem.bores().get(0), cell), state.day())));
    }

    private String distanceWords(int cell) {
        return Figures.significant(distance(problem.bores().get(0), cell), 4) + " m";
    }

    private double distance(Bore bore, int cell) {
        RectilinearGrid grid = problem.aquifer().grid();
        return distance(bore, grid.centreX(cell), grid.centreY(cell));
    }

    private static double distance(Bore bore, double x, double y) {
        return Math.hypot(x - bore.x(), y - bore.y());
    }

    /** Cells at least two cells away from every bore. */
    private Collection<Integer> cells() {
        List<Integer> cells = new ArrayList<>();
        for (int[] step : STEPS) {
            int cell = beside(step);
            if (cell >= 0) {
                cells.add(cell);
            }
        }
        return cells;
    }

    private int beside(int[] step) {
        RectilinearGrid grid = problem.aquifer().grid();
        Bore first = problem.bores().get(0);
        int own = grid.locate(first.x(), first.y());
        int column = grid.column(own) + step[0];
        int row = grid.row(own) + step[1];
        if (column < 0 || column >= grid.columns() || row < 0 || row >= grid.rows()) {
            return -1;
        }
        int cell = grid.cell(column, row);
        return clear(grid.centreX(cell), grid.centreY(cell)) ? cell : -1;
    }

    /** Whether a place is at least two cells away from every bore. */
    private boolean clear(double x, double y) {
        RectilinearGrid grid = problem.aquifer().grid();
        Bore first = problem.bores().get(0);
        int own = grid.locate(first.x(), first.y());
        double near = 2 * Math.max(grid.x().width(grid.column(own)), grid.y().width(grid.row(own)));
        return problem.bores().stream().allMatch(bore -> distance(bore, x, y) >= near * (1 - 1e-9));
    }

    /** Draws drawdown over the logarithm of time at the first bore and at some cells. */
    Plot overTime(List<State> states, boolean logarithmicDrawdown) {
        Plot.Scale time = Plot.Scale.logarithmic("days since pumping began");
        return draw(
                states,
                time,
                logarithmicDrawdown ? Plot.Scale.logarithmic("drawdown (m)") : Plot.Scale.linear("drawdown (m)"));
    }

    /** Draws drawdown over time at the first bore and at some cells, on even scales. */
    Plot overEvenTime(List<State> states) {
        return draw(states, Plot.Scale.linear("days"), Plot.Scale.linear("drawdown (m)"));
    }

    private Plot draw(List<State> states, Plot.Scale time, Plot.Scale drawdown) {
        List<Series> series = new ArrayList<>();
        Bore bore = problem.bores().get(0);
        addCurve(series, "bore", states, time, day -> expected.atWall(bore, day), state -> -state.wallHead()[0]);
        RectilinearGrid grid = problem.aquifer().grid();
        for (int drawn : DRAWN) {
            int cell = beside(STEPS[drawn]);
            if (cell >= 0) {
                addCurve(
                        series,
                        distanceWords(cell),
                        states,
                        time,
                        day -> expected.at(grid.centreX(cell), grid.centreY(cell), day),
                        state -> -state.head()[cell]);
            }
        }
        return new Plot(label + ": drawdown over time", time, drawdown, series);
    }

    private void addCurve(
            List<Series> series,
            String place,
            List<State> states,
            Plot.Scale time,
            DoubleUnaryOperator line,
            ToDoubleFunction<State> mark) {
        int pattern = series.size() / 2;
        double first = states.get(0).day();
        double last = states.get(states.size() - 1).day();
        double[] days =
                time.logarithmic() ? Field.days(first, last, LINE_POINTS) : Field.evenDays(first, last, LINE_POINTS);
        double[] drawdowns = new double[days.length];
        for (int i = 0; i < days.length; i++) {
            drawdowns[i] = line.applyAsDouble(days[i]);
        }
        series.add(new Series(published + ", " + place, Series.Kind.PUBLISHED, pattern, days, drawdowns));
        series.add(new Series(
                "Headfall, " + place,
                Series.Kind.OURS,
                pattern,
                states.stream().mapToDouble(State::day).toArray(),
                states.stream().mapToDouble(mark).toArray()));
    }
}

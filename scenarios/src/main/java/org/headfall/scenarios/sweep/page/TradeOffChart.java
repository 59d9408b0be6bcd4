package org.headfall.scenarios.sweep.page;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;

/** Draws each run by two aims, the best compromises larger. */
final class TradeOffChart {

    /** More points than can be told apart make a page slow and no clearer. */
    private static final int MOST_DOTS = 2_000;

    private final SweepTable table;
    private final SweepAnswers answers;

    TradeOffChart(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    List<Chart.Group> all() {
        List<Aim> aims = table.sweep().questions().tradeOff();
        if (aims.size() < 2) {
            return List.of();
        }
        KeptFigure first = table.sweep().figure(aims.get(0).figure());
        KeptFigure second = table.sweep().figure(aims.get(1).figure());
        double[] a = table.figure(first.name());
        double[] b = table.figure(second.name());
        ChartScale across = ChartDrawing.across(a);
        ChartScale up = ChartDrawing.up(b);
        ChartDrawing drawing = new ChartDrawing().axes(across, up);
        List<Integer> best = answers.compromises();
        int every = Math.max(1, a.length / MOST_DOTS);
        Set<Integer> front = new HashSet<>(best);
        for (int place = 0; place < a.length; place++) {
            boolean shown = front.contains(place) || place % every == 0;
            if (shown && Double.isFinite(a[place]) && Double.isFinite(b[place])) {
                drawing.dot(
                        front.contains(place) ? "best" : "run",
                        across.place(a[place]),
                        up.place(b[place]),
                        "run " + (place + 1) + ": " + Numbers.words(a[place]) + ", " + Numbers.words(b[place]));
            }
        }
        return List.of(new Chart.Group(
                "What one aim costs the other",
                best.size() + " of " + drawn(a, b)
                        + " runs, drawn larger, are beaten by no other in one aim without losing" + " in another."
                        + (every > 1 ? " Of the others one in " + every + " is drawn." : ""),
                List.of(drawing.named("What one aim costs the other", first.heading(), second.heading()))));
    }

    private static long drawn(double[] a, double[] b) {
        return IntStream.range(0, a.length)
                .filter(place -> Double.isFinite(a[place]) && Double.isFinite(b[place]))
                .count();
    }
}

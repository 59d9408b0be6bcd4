package org.headfall.scenarios.planning;

import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.quantity.Significant;

/**
 * Rates of bores over time, a chart a bore. Time is counted as a share of the period, from 0 to 1.
 *
 * @param ticks dates below the charts, in order of time
 * @param seasons what each line stands for; one empty name where rates are those of whole years
 * @param stretches stretches of time with one rate a bore, in order of time, from the start to the end of the period
 * @param bores the bores
 */
public record RateSteps(List<Tick> ticks, List<String> seasons, List<Stretch> stretches, List<Bore> bores) {

    /** Width and height of a chart in the units of its paths; a page stretches it. */
    public static final int WIDTH = 1000;

    /** Height of a chart in the units of its paths. */
    public static final int HEIGHT = 100;

    /** Styles of lines, after which seasons begin again with the first. */
    public static final int STYLES = 4;

    /** Copies the lists. */
    public RateSteps {
        ticks = List.copyOf(ticks);
        seasons = List.copyOf(seasons);
        stretches = List.copyOf(stretches);
        bores = List.copyOf(bores);
    }

    /**
     * A date below the charts.
     *
     * @param at share of the period
     * @param label what stands there
     */
    public record Tick(double at, String label) {

        /** Nearer to an end of the chart than this (share of the period) a label stands beside its date, not below it. */
        private static final double NEAR_THE_END = 0.05;

        /** Where it stands, in per cent of the width. */
        public String place() {
            return String.format(Locale.ROOT, "%.3f%%", 100 * at);
        }

        /** Which end of the label stands there. */
        public String anchor() {
            return at < NEAR_THE_END ? "start" : at > 1 - NEAR_THE_END ? "end" : "middle";
        }
    }

    /**
     * A stretch of time.
     *
     * @param from its first moment as a share of the period
     * @param words its first and last moment in words
     */
    public record Stretch(double from, String words) {}

    /**
     * A bore.
     *
     * @param name its name
     * @param mean its mean rate in words
     * @param most the rate at the top of its chart (L/s), positive
     * @param lines its rates, a line a season
     * @param rates its rate in each of the stretches, in words
     */
    public record Bore(String name, String mean, double most, List<List<Step>> lines, List<String> rates) {

        /** Copies the lists. */
        public Bore {
            lines = lines.stream().map(List::copyOf).toList();
            rates = List.copyOf(rates);
        }

        /** The rate at the top of the chart, in words. */
        public String top() {
            return Significant.text(most) + " L/s";
        }

        /** A line as the path of a picture of {@value #WIDTH} by {@value #HEIGHT}, with its corners at the steps. */
        public String path(List<Step> line) {
            StringBuilder path = new StringBuilder();
            for (Step step : line) {
                path.append(path.isEmpty() ? "M" : "L").append(point(step.from(), step.rate()));
                path.append('L').append(point(step.to(), step.rate()));
            }
            return path.toString();
        }

        private String point(double at, double rate) {
            return String.format(Locale.ROOT, "%.2f %.2f", WIDTH * at, HEIGHT * (1 - rate / most));
        }
    }

    /**
     * A rate that holds for a while.
     *
     * @param from from when on (share of the period)
     * @param to until when (share of the period)
     * @param rate the rate (L/s)
     */
    public record Step(double from, double to, double rate) {}

    /** An upright line at a date. */
    public String upright(Tick tick) {
        return String.format(Locale.ROOT, "M%.2f 0V%d", WIDTH * tick.at(), HEIGHT);
    }
}

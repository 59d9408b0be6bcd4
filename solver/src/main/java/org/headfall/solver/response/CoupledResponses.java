package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * What a small change of rates in a run does to heads and discharges, with what springs and bores that follow head then give
 * less or more: the run made linear in its own state. With s drawdown by the change, R the responses of the aquifer alone, u
 * the change of rates, and g(t) the conductance by which a point answers on a day ({@link HeadAnswers}),
 *
 * <pre>{@code s = R * (u + q),   q = -g s}</pre>
 *
 * <p>where {@code *} is convolution over time. Many rates at once are followed through time ({@link ChangeForward}); effects
 * of many rates on one receptor and day come from a single run backward in time ({@link ChangeBackward}). Immutable.
 */
public final class CoupledResponses {

    private final UnitResponses responses;
    private final HeadAnswers answers;

    /**
     * Responses of a run.
     *
     * @param responses responses of its problem, up to its end
     * @param answers what answers head in it
     */
    public CoupledResponses(UnitResponses responses, HeadAnswers answers) {
        this.responses = responses;
        this.answers = answers;
    }

    /** Responses of the aquifer alone. */
    public UnitResponses alone() {
        return responses;
    }

    /**
     * Drawdown at a receptor on a day by a unit discharge of each of some bores that has lasted since each of some days.
     *
     * @param receptor the receptor: bores first, then springs, then points
     * @param day the day (d)
     * @param bores the bores, none of which follows head
     * @param since the days, increasing (d)
     * @return drawdown per discharge (d/m²): {@code [bore][day since]}; none by what begins on the day or later
     */
    public double[][] at(int receptor, double day, int[] bores, double[] since) {
        return effects(ChangeBackward.ofHead(responses, answers, receptor, day), day, bores, since);
    }

    /**
     * By how much less a point discharges on a day for a unit discharge of each of some bores that has lasted since each of
     * some days.
     *
     * @param point a bore or spring that answers head on the day ({@link #headPerDischarge})
     * @param day the day (d)
     * @param bores the bores, none of which follows head
     * @param since the days, increasing (d)
     * @return fall of its discharge per discharge (-): {@code [bore][day since]}; none by what begins on the day or later
     * @throws IllegalArgumentException if it never answers head
     */
    public double[][] lessDischarge(int point, double day, int[] bores, double[] since) {
        return effects(ChangeBackward.ofDischarge(responses, answers, point, day), day, bores, since);
    }

    /**
     * Fall of head at the wall of a point that takes a unit from its discharge just before a day.
     *
     * @param point a bore or spring
     * @param day the day (d), after the start
     * @return head per discharge (d/m²); infinite if it does not answer then
     */
    public double headPerDischarge(int point, double day) {
        int place = Arrays.binarySearch(answers.points(), point);
        return place < 0
                ? Double.POSITIVE_INFINITY
                : answers.headPerDischarge(place, day - Math.min(ChangeBackward.FIRST, day / 2), day);
    }

    private double[][] effects(ChangeBackward backward, double day, int[] bores, double[] since) {
        double[][] found = new double[bores.length][since.length];
        double[] ages = DoubleStream.of(since)
                .filter(begun -> begun < day)
                .map(begun -> day - begun)
                .sorted()
                .toArray();
        double[] stops = DoubleStream.concat(
                        DoubleStream.of(ages),
                        DoubleStream.of(answers.switches()).map(turn -> day - turn))
                .filter(age -> age > 0 && ages.length > 0 && age <= ages[ages.length - 1])
                .sorted()
                .distinct()
                .toArray();
        for (double stop : stops) {
            backward.advance(stop);
            int wanted = Arrays.binarySearch(ages, stop);
            if (wanted >= 0) {
                double[] effect = backward.effects(bores);
                for (int k = 0; k < since.length; k++) {
                    if (day - since[k] == stop) {
                        for (int b = 0; b < bores.length; b++) {
                            found[b][k] = effect[b];
                        }
                    }
                }
            }
        }
        return found;
    }

    /**
     * What rates do.
     *
     * @param drawdown drawdown (m): {@code [day][receptor]}
     * @param lessDischarge by how much less bores and springs that follow head discharge (m³/d): {@code [day][cause]}, with
     *     the negative of its rate for each bore whose rate it is
     */
    @SuppressWarnings("ArrayRecordComponent") // large tables, handed on and never compared
    public record Changes(double[][] drawdown, double[][] lessDischarge) {}

    /**
     * What rates that are constant from one day to the next do to all receptors and discharges.
     *
     * @param bores the bores, none of which follows head
     * @param from days from which on rates hold, increasing, the first of them the start of the run (d)
     * @param rates rate of each bore from each of these days on (m³/d): {@code [bore][from]}
     * @param days days wanted, increasing (d)
     * @return drawdown and what follows head discharges less, on each of these days
     */
    public Changes changes(int[] bores, double[] from, double[][] rates, double[] days) {
        Changes found = new Changes(
                new double[days.length][responses.receptors()], new double[days.length][responses.causes()]);
        double end = days.length == 0 ? 0 : days[days.length - 1];
        double[] stops = DoubleStream.of(DoubleStream.concat(
                                DoubleStream.concat(DoubleStream.of(from), DoubleStream.of(days)),
                                DoubleStream.of(answers.switches()))
                        .filter(day -> day > from[0] && day <= end)
                        .toArray())
                .sorted()
                .distinct()
                .toArray();
        ChangeForward forward = new ChangeForward(responses, answers, bores, from[0]);
        int interval = 0;
        forward.jump(rates, interval);
        for (double stop : stops) {
            forward.advance(stop);
            int wanted = Arrays.binarySearch(days, stop);
            if (wanted >= 0) {
                found.drawdown()[wanted] = forward.drawdowns();
                found.lessDischarge()[wanted] = forward.lessDischarges();
            }
            int next = Arrays.binarySearch(from, stop);
            if (next >= 0) {
                forward.jump(rates, next);
            } else if (Arrays.binarySearch(answers.switches(), stop) >= 0) {
                forward.anew();
            }
        }
        return found;
    }
}

package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.ejml.data.DMatrixRMaj;

/**
 * What a small change of rates in a run does to heads, with what springs and bores that follow head then give less or more:
 * the run made linear in its own state. With s drawdown by the change, R the responses of the aquifer alone, u the change of
 * rates, and g(t) the conductance by which a point answers on a day ({@link HeadAnswers}),
 *
 * <pre>{@code s = R * (u + q),   q = -g s}</pre>
 *
 * <p>where {@code *} is convolution over time. Effects of many rates on one receptor and day come from a single run backward
 * in time: what a unit at A does at B later, a unit at B does at A in the run with time reversed, as the equation of flow is
 * its own adjoint (Sykes, Wilson and Andrews 1985, Water Resour. Res. 21, 359-371). With S the integral of that drawdown over
 * reversed time and Q of what points give, {@code S = R_B + R * dQ, dQ = -g dS}, which a step meets at its end. Immutable.
 */
public final class CoupledResponses {

    /** First step after a jump (d). */
    private static final double FIRST = 0.01;

    /** By how much the time since a jump grows in a step backward, and forward, where more may be off. */
    private static final double GROWTH = 1.3;

    private static final double FORWARD_GROWTH = 1.6;

    /** First step forward after a jump (d). */
    private static final double FORWARD_FIRST = 0.05;

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
        Backward backward = new Backward(receptor, day);
        for (double stop : stops) {
            backward.advance(stop);
            int wanted = Arrays.binarySearch(ages, stop);
            if (wanted >= 0) {
                double[] drawdown = backward.drawdowns(bores);
                for (int k = 0; k < since.length; k++) {
                    if (day - since[k] == stop) {
                        for (int b = 0; b < bores.length; b++) {
                            found[b][k] = drawdown[b];
                        }
                    }
                }
            }
        }
        return found;
    }

    /** The run with time reversed, from a unit discharge at one receptor on. */
    private final class Backward {
        private final int receptor;
        private final double day;
        private final Superposition superposition = new Superposition(responses.modes());
        private final double[] given = new double[responses.causes()];
        private final double[] felt = new double[answers.points().length];
        private double age;

        Backward(int receptor, double day) {
            this.receptor = receptor;
            this.day = day;
        }

        void advance(double stop) {
            while (age < stop) {
                double next = Math.max(FIRST, age * GROWTH);
                step(next * GROWTH < stop ? next : stop);
            }
        }

        private void step(double end) {
            boolean anew = age == 0;
            superposition.lookAhead(end - age, given, given);
            double[] now = drawdowns(end, answers.points());
            int[] answering = answers.answering(day - end, day - age);
            if (answering.length > 0) {
                double[] chords = new double[answering.length];
                double[] missing = new double[answering.length];
                for (int k = 0; k < answering.length; k++) {
                    chords[k] = answers.headPerDischarge(answering[k], day - end, day - age);
                    missing[k] = felt[answering[k]] - now[answering[k]];
                }
                take(superposition, answering, chords, missing, anew, given);
                now = drawdowns(end, answers.points());
            }
            superposition.accept();
            System.arraycopy(now, 0, felt, 0, felt.length);
            age = end;
        }

        /** Integral of drawdown at some bores and springs up to now. */
        double[] drawdowns(int[] points) {
            return drawdowns(age, points);
        }

        private double[] drawdowns(double at, int[] points) {
            double[] sum = superposition.drawdowns(points);
            for (int i = 0; i < points.length; i++) {
                sum[i] += responses.at(receptor, points[i], at);
            }
            return sum;
        }
    }

    /** Has points give so much more that {@code (chord + K) x} is what is missing. */
    private void take(
            Superposition superposition,
            int[] answering,
            double[] chords,
            double[] missing,
            boolean anew,
            double[] discharge) {
        int n = answering.length;
        int[] points = Arrays.stream(answering).map(i -> answers.points()[i]).toArray();
        DMatrixRMaj right = new DMatrixRMaj(n, 1, true, missing);
        DMatrixRMaj further = new DMatrixRMaj(n, 1);
        ChordSystem.solver(superposition, points, chords, anew).solve(right, further);
        for (int k = 0; k < n; k++) {
            superposition.addToLook(points[k], further.get(k), anew);
            discharge[points[k]] += further.get(k);
        }
    }

    /**
     * Drawdown of all receptors by rates that are constant from one day to the next.
     *
     * @param bores the bores, none of which follows head
     * @param from days from which on rates hold, increasing, the first of them the start of the run (d)
     * @param rates rate of each bore from each of these days on (m³/d): {@code [bore][from]}
     * @param days days wanted, increasing (d)
     * @return drawdown (m): {@code [day][receptor]}
     */
    public double[][] drawdowns(int[] bores, double[] from, double[][] rates, double[] days) {
        double[][] found = new double[days.length][responses.receptors()];
        double end = days.length == 0 ? 0 : days[days.length - 1];
        double[] stops = DoubleStream.of(DoubleStream.concat(
                                DoubleStream.concat(DoubleStream.of(from), DoubleStream.of(days)),
                                DoubleStream.of(answers.switches()))
                        .filter(day -> day > from[0] && day <= end)
                        .toArray())
                .sorted()
                .distinct()
                .toArray();
        Forward forward = new Forward(bores, from[0]);
        int interval = 0;
        forward.jump(rates, interval);
        for (double stop : stops) {
            forward.advance(stop);
            int wanted = Arrays.binarySearch(days, stop);
            if (wanted >= 0) {
                found[wanted] = forward.drawdowns();
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

    /** The change of the run, step by step. */
    private final class Forward {
        private final int[] bores;
        private final Superposition superposition = new Superposition(responses.modes());
        private final double[] begin = new double[responses.causes()];
        private double day;
        private double jumped;

        Forward(int[] bores, double start) {
            this.bores = bores;
            day = start;
            jumped = start;
        }

        void jump(double[][] rates, int interval) {
            for (int b = 0; b < bores.length; b++) {
                begin[bores[b]] = rates[b][interval];
            }
            anew();
        }

        void anew() {
            jumped = day;
        }

        void advance(double stop) {
            while (day < stop) {
                double next = jumped + Math.max(FORWARD_FIRST, (day - jumped) * FORWARD_GROWTH);
                step(jumped + (next - jumped) * FORWARD_GROWTH < stop ? next : stop);
            }
        }

        private void step(double end) {
            boolean anew = day == jumped;
            int[] answering = answers.answering(day, end);
            double[] atEnd = begin.clone();
            for (int i = 0; i < answers.points().length; i++) {
                int point = answers.points()[i];
                if (Arrays.binarySearch(answering, i) < 0) {
                    atEnd[point] = 0;
                }
                begin[point] = anew ? atEnd[point] : begin[point];
            }
            superposition.lookAhead(end - day, begin, atEnd);
            if (answering.length > 0) {
                int[] points =
                        Arrays.stream(answering).map(i -> answers.points()[i]).toArray();
                double[] drawdown = superposition.drawdowns(points);
                double[] chords = new double[answering.length];
                double[] missing = new double[answering.length];
                for (int k = 0; k < answering.length; k++) {
                    chords[k] = answers.headPerDischarge(answering[k], day, end);
                    missing[k] = -drawdown[k] - chords[k] * atEnd[points[k]];
                }
                take(superposition, answering, chords, missing, anew, atEnd);
            }
            superposition.accept();
            System.arraycopy(atEnd, 0, begin, 0, begin.length);
            day = end;
        }

        double[] drawdowns() {
            return superposition.drawdowns();
        }
    }
}

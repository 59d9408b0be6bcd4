package org.headfall.solver.response;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * A run with time reversed, from something at one receptor on: effects of many rates on one receptor and day at once. What a
 * unit at A does at B later, a unit at B does at A in the run with time reversed, as the equation of flow is its own adjoint
 * (Sykes, Wilson and Andrews 1985, Water Resour. Res. 21, 359-371). With S the integral of that drawdown over reversed time
 * and Q of what points give, g the conductance of each,
 *
 * <pre>{@code S = R_B + R * dQ,   dQ = -g dS}</pre>
 *
 * <p>which a step meets at its end; R_B is the response to a unit discharge at the receptor. Its drawdown elsewhere is what a
 * unit there does to head at the receptor. For the discharge of a point that answers, with {@code q / g + R * q = -R * u} in
 * the run, the same holds of {@code (1/g + R) * dQ = 1}: a unit of head, not of discharge, is taken at the point, and S is by
 * how much less it gives.
 */
final class ChangeBackward {

    /** First step (d). */
    static final double FIRST = 0.01;

    /** By how much time grows in a step. */
    private static final double GROWTH = 1.3;

    private final UnitResponses responses;
    private final HeadAnswers answers;
    private final double day;

    /** Receptor of a unit discharge; none if a unit of head is taken. */
    private final OptionalInt discharging;

    private final Superposition superposition;
    private final double[] given;

    /** What has been met at each of the points: integral of drawdown less what was taken of head. */
    private final double[] felt;

    private double age;

    private ChangeBackward(
            UnitResponses responses, HeadAnswers answers, double day, OptionalInt discharging, double[] felt) {
        this.responses = responses;
        this.answers = answers;
        this.day = day;
        this.discharging = discharging;
        this.felt = felt;
        superposition = new Superposition(responses.modes());
        given = new double[responses.causes()];
    }

    /** Effects on head at a receptor on a day. */
    static ChangeBackward ofHead(UnitResponses responses, HeadAnswers answers, int receptor, double day) {
        return new ChangeBackward(
                responses, answers, day, OptionalInt.of(receptor), new double[answers.points().length]);
    }

    /**
     * Effects on the discharge of a point on a day, none unless it answers just before.
     *
     * @throws IllegalArgumentException if it never answers
     */
    static ChangeBackward ofDischarge(UnitResponses responses, HeadAnswers answers, int point, double day) {
        int place = Arrays.binarySearch(answers.points(), point);
        if (place < 0) {
            throw new IllegalArgumentException("the discharge of point " + point + " never follows head");
        }
        double[] taken = new double[answers.points().length];
        taken[place] = 1;
        return new ChangeBackward(responses, answers, day, OptionalInt.empty(), taken);
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
        double[] now = effects(end, answers.points());
        int[] answering = answers.answering(day - end, day - age);
        if (answering.length > 0) {
            int[] points =
                    Arrays.stream(answering).map(i -> answers.points()[i]).toArray();
            double[] chords = new double[answering.length];
            double[] missing = new double[answering.length];
            for (int k = 0; k < answering.length; k++) {
                chords[k] = answers.headPerDischarge(answering[k], day - end, day - age);
                missing[k] = felt[answering[k]] - now[answering[k]];
            }
            ChordSystem.take(superposition, points, chords, missing, anew, given);
            now = effects(end, answers.points());
        }
        superposition.accept();
        System.arraycopy(now, 0, felt, 0, felt.length);
        age = end;
    }

    /** Effect of a unit discharge of each of some bores and springs that has lasted as long as this run has come. */
    double[] effects(int[] points) {
        return effects(age, points);
    }

    private double[] effects(double at, int[] points) {
        double[] sum = superposition.drawdowns(points);
        if (discharging.isPresent()) {
            for (int i = 0; i < points.length; i++) {
                sum[i] += responses.at(discharging.getAsInt(), points[i], at);
            }
        }
        return sum;
    }
}

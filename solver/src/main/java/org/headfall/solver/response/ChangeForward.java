package org.headfall.solver.response;

import java.util.Arrays;

/** A change of rates in a run, followed through time step by step with what answers it. */
final class ChangeForward {

    /** By how much the time since a jump grows in a step. */
    private static final double GROWTH = 1.6;

    /** First step after a jump (d). */
    private static final double FIRST = 0.05;

    private final HeadAnswers answers;
    private final int[] bores;
    private final Superposition superposition;
    private final double[] begin;
    private double day;
    private double jumped;

    ChangeForward(UnitResponses responses, HeadAnswers answers, int[] bores, double start) {
        this.answers = answers;
        this.bores = bores;
        superposition = new Superposition(responses.modes());
        begin = new double[responses.causes()];
        day = start;
        jumped = start;
    }

    /** From now on rates are those of an interval. */
    void jump(double[][] rates, int interval) {
        for (int b = 0; b < bores.length; b++) {
            begin[bores[b]] = rates[b][interval];
        }
        anew();
    }

    /** From now on other points answer. */
    void anew() {
        jumped = day;
    }

    void advance(double stop) {
        while (day < stop) {
            double next = jumped + Math.max(FIRST, (day - jumped) * GROWTH);
            step(jumped + (next - jumped) * GROWTH < stop ? next : stop);
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
            ChordSystem.take(superposition, points, chords, missing, anew, atEnd);
        }
        superposition.accept();
        System.arraycopy(atEnd, 0, begin, 0, begin.length);
        day = end;
    }

    /** Drawdown of all receptors by now (m). */
    double[] drawdowns() {
        return superposition.drawdowns();
    }

    /** By how much less each cause discharges now (m³/d). */
    double[] lessDischarges() {
        return Arrays.stream(begin).map(more -> -more).toArray();
    }
}

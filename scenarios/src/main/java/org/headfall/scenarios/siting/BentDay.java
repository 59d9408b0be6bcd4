package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.limits.ReferenceMoment;

/**
 * What bent rules do to a limited value on a day, by the straight fall of head at their places on that day and at moments that
 * the value is measured from. At each moment the places act on each other: the excess of one raises head at the others, place
 * by place until it settles. Each place for itself is solved for as it bends, so that is the search for the least of a
 * convex function along one axis after another, which settles. Immutable.
 */
final class BentDay {

    private static final int MOST_ROUNDS = 100;
    private static final double SETTLED = 1e-7;

    private final List<Term> terms = new ArrayList<>();
    private final double[][] among;

    /**
     * A place at a moment.
     *
     * @param rule the rule of the place
     * @param moment the day itself, or one that the value is measured from (d)
     * @param perExcess change of the limited value by each m³/d that the place loses more, in its unit
     * @param bend the bend then
     */
    private record Term(BentRule rule, double moment, double perExcess, Bend bend) {}

    /**
     * A day.
     *
     * @param moments the day with weight -1, and those that the value is measured from with theirs
     * @param rules rules that matter at the limited place
     * @param receptor number of that place among the receptors of effects
     * @param perMetre change of the limited value per metre of fall, in its unit
     */
    BentDay(List<ReferenceMoment> moments, List<BentRule> rules, int receptor, double perMetre) {
        for (ReferenceMoment moment : moments) {
            for (BentRule rule : rules) {
                Bend bend = rule.on(moment.day());
                if (!bend.isStraight()) {
                    double perExcess = perMetre * moment.weight() * rule.at(receptor, moment.day());
                    terms.add(new Term(rule, moment.day(), perExcess, bend));
                }
            }
        }
        among = new double[size()][size()];
        for (int i = 0; i < size(); i++) {
            for (int j = 0; j < size(); j++) {
                Term one = terms.get(i);
                Term other = terms.get(j);
                boolean acts = i != j && one.moment() == other.moment();
                among[i][j] = acts ? other.rule().at(one.rule().receptor(), one.moment()) : 0;
            }
        }
    }

    /** How many falls of head it takes; none where all rules are straight. */
    int size() {
        return terms.size();
    }

    /** Number of the place of a fall among the receptors of effects. */
    int receptor(int fall) {
        return terms.get(fall).rule().receptor();
    }

    /** Moment of a fall (d). */
    double moment(int fall) {
        return terms.get(fall).moment();
    }

    /**
     * Change of the limited value by all bends.
     *
     * @param falls falls of head by straight rules (m)
     * @return the change, in its unit
     */
    double change(double[] falls) {
        double[] excess = new double[falls.length];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double largest = 0;
            double moved = 0;
            for (int i = 0; i < excess.length; i++) {
                double fall = falls[i];
                for (int j = 0; j < excess.length; j++) {
                    fall -= among[i][j] * excess[j];
                }
                double next = terms.get(i).bend().excess(fall);
                moved = Math.max(moved, Math.abs(next - excess[i]));
                largest = Math.max(largest, Math.abs(next));
                excess[i] = next;
            }
            if (moved <= SETTLED * largest) {
                break;
            }
        }
        double change = 0;
        for (int i = 0; i < excess.length; i++) {
            change += terms.get(i).perExcess() * excess[i];
        }
        return change;
    }
}

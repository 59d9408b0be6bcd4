package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.limits.ReferenceMoment;

/**
 * What bent rules do to a limited value on a day, by the straight fall of head at their places on that day and at moments that
 * the value is measured from. At each moment the places act on each other ({@link MutualBends}). Not for several threads.
 */
final class BentDay {

    private final List<Term> terms = new ArrayList<>();
    private final MutualBends mutual;

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
        double[][] among = new double[size()][size()];
        for (int i = 0; i < size(); i++) {
            for (int j = 0; j < size(); j++) {
                Term one = terms.get(i);
                Term other = terms.get(j);
                boolean acts = i != j && one.moment() == other.moment();
                among[i][j] = acts ? other.rule().at(one.rule().receptor(), one.moment()) : 0;
            }
        }
        mutual = new MutualBends(terms.stream().map(Term::bend).toList(), among);
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
        double[] excess = mutual.excesses(falls);
        double change = 0;
        for (int i = 0; i < excess.length; i++) {
            change += terms.get(i).perExcess() * excess[i];
        }
        return change;
    }

    /** Share of the largest excess by which one still moved when the search for it ended (-); 0 where all have settled. */
    double unsettled() {
        return mutual.unsettled();
    }
}

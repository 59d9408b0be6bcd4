package org.headfall.solver.response;

import java.util.Arrays;
import org.headfall.solver.flow.PointRules;

/**
 * State of all receptors on a day of a superposed run. Arrays are not copied.
 *
 * @param day days since the start
 * @param head head of each receptor: bores at their walls, then springs, then points (m above datum)
 * @param discharge discharge of each bore, then each spring (m³/d)
 * @param asked discharge asked of each bore, then each spring (m³/d); what it gives where the rule leaves it to head
 * @param levelInBore level of the water in each bore (m above datum)
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once and never compared
public record SuperposedState(double day, double[] head, double[] discharge, double[] asked, double[] levelInBore) {

    /**
     * State of which heads and discharges are known.
     *
     * @param rules rules in force
     * @param bores number of bores
     * @param moment moment of the rules (d)
     * @param day day that the state is dated (d)
     * @param head head of each receptor (m above datum)
     * @param discharge discharge of each bore, then each spring (m³/d); copied
     */
    static SuperposedState of(
            PointRules rules, int bores, double moment, double day, double[] head, double[] discharge) {
        double[] asked = rules.asked(moment);
        Arrays.setAll(asked, i -> Double.isNaN(asked[i]) ? discharge[i] : asked[i]);
        double[] level = new double[bores];
        Arrays.setAll(level, bore -> rules.levelInBore(bore, head[bore], discharge[bore]));
        return new SuperposedState(day, head, discharge.clone(), asked, level);
    }
}

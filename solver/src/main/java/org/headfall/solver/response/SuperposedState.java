package org.headfall.solver.response;

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
public record SuperposedState(double day, double[] head, double[] discharge, double[] asked, double[] levelInBore) {}

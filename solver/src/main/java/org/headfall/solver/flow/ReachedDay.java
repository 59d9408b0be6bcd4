package org.headfall.solver.flow;

/**
 * What a run found by superposition has come to on a day. Arrays are not copied.
 *
 * @param day the day (d)
 * @param weights {@code [source][shift]} weights of the solutions of {@link SourceFields} that drawdown since the start is the
 *     sum of, and of an even fall of all heads after them
 * @param integral weights that the integral of drawdown since the last such day is the sum of
 * @param taken volume that each bore, then each spring, has taken since the last such day (m³)
 * @param givenBack volume that each has put into the aquifer since then (m³)
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
public record ReachedDay(double day, double[][] weights, double[][] integral, double[] taken, double[] givenBack) {}

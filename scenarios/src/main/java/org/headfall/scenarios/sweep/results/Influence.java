package org.headfall.scenarios.sweep.results;

import java.util.OptionalDouble;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.statistics.Swing;

/**
 * How much a figure depends on a variable.
 *
 * @param figure the figure
 * @param variable the variable
 * @param rankCorrelation rank correlation of the two, NaN where values are no numbers
 * @param swing mean figure with the variable in its lowest and in its highest tenth
 * @param first first Sobol index, if runs were chosen for it
 * @param total total Sobol index, if runs were chosen for it
 * @param firstError standard error of the first index, NaN if there is none
 * @param totalError standard error of the total index, NaN if there is none
 */
public record Influence(
        String figure,
        Variable variable,
        double rankCorrelation,
        Swing swing,
        OptionalDouble first,
        OptionalDouble total,
        double firstError,
        double totalError) {}

package org.headfall.scenarios.sweep.results;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is found in the runs of a sweep, once for all sentences, tables and charts: ranking choices draws their samples again
 * hundreds of times, and influences look at every variable of every figure.
 *
 * @param table the runs
 * @param answers answers of single runs
 * @param choices choices that got the same samples; nothing if samples are not repeated for choices
 * @param influences how much each figure asked for depends on each variable, by its name
 */
public record SweepFindings(
        SweepTable table,
        SweepAnswers answers,
        Optional<RankedChoices> choices,
        Map<String, List<Influence>> influences) {

    /**
     * Finds all of it.
     *
     * @param table the runs
     * @return the findings
     */
    public static SweepFindings of(SweepTable table) {
        return new SweepFindings(
                table, new SweepAnswers(table), RankedChoices.of(table), new Influences(table).byFigure());
    }
}

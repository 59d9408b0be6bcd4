package org.headfall.scenarios.sweep.results;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.statistics.Swing;

/**
 * What one figure depends on, in a sentence: what counts most, as far as sampling can tell, and what it leaves open.
 *
 * @param figure the figure
 * @param influences of all variables, those told apart from none first, the most influential before the others
 * @param unranked what could not be ranked
 */
record Dependence(KeptFigure figure, List<Influence> influences, Optional<Unranked> unranked) {

    /** Copies the list. */
    Dependence {
        influences = List.copyOf(influences);
    }

    String sentence() {
        String rest = unranked.map(left -> " " + left.words()).orElse("");
        if (influences.stream().allMatch(influence -> influence.weight() < 0)) {
            return figure.name() + ": no influence was ranked." + rest;
        }
        Influence first = influences.get(0);
        String among = unranked.isEmpty() ? "" : "Among what was ranked, ";
        return first.isToldApart()
                ? among + figure.name() + " depends most on " + first.variable().name() + ": " + how(first)
                        + rivals(first) + notToldApart() + rest
                : among + figure.name() + ": the influence of no variable is told apart from none in these "
                        + first.samples() + " samples." + rest;
    }

    private String how(Influence influence) {
        String ends = Double.isNaN(influence.swing().length()) ? "" : betweenEnds(influence);
        String within = influence.isLongerWithin() ? alongIt(influence) : "";
        return Stream.of(ends, within, ofVariance(influence.indices()))
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining("; "))
                + (influence.way().isToldByEnds() ? "." : " (" + influence.words() + ").");
    }

    private String betweenEnds(Influence influence) {
        Variable variable = influence.variable();
        Swing swing = influence.swing();
        String low = variable.numeric() ? "where it is low" : "with " + Choices.shortText(variable, swing.atLow());
        String high = variable.numeric() ? "where it is high" : "with " + Choices.shortText(variable, swing.atHigh());
        return value(swing.low()) + " " + low + ", " + value(swing.high()) + " " + high + ", in the mean"
                + difference(swing);
    }

    private String alongIt(Influence influence) {
        return "from " + value(influence.groups().least()) + " to "
                + value(influence.groups().greatest()) + " in the means of groups along it";
    }

    private static String ofVariance(Influence.Indices indices) {
        if (indices.total().isEmpty()) {
            return "";
        }
        return Numbers.perCent(indices.total().getAsDouble())
                + " of its variance would be left if all else were known (± "
                + Numbers.perCent(indices.totalError()) + " standard error)"
                + (indices.contradictThemselves()
                        ? ", less than its first index, which cannot be: too few samples"
                        : "");
    }

    private static String difference(Swing swing) {
        double error = swing.error();
        if (error == 0) {
            return "";
        }
        String difference = " (difference " + Numbers.words(swing.high() - swing.low());
        return Double.isNaN(error)
                ? difference + ", error not known: too few samples)"
                : difference + " ± " + Numbers.error(error) + ", 95 % by sampling)";
    }

    private String value(double value) {
        return Numbers.words(value) + (figure.unit().isEmpty() ? "" : " " + figure.unit());
    }

    private String rivals(Influence first) {
        String names = names(influences.stream()
                .skip(1)
                .filter(other -> other.isToldApart() && other.weight() >= 0 && first.isLikeIn(other)));
        return names.isEmpty() ? "" : " Sampling leaves open whether it counts more than " + names + ".";
    }

    private String notToldApart() {
        String names = names(influences.stream().filter(other -> other.weight() >= 0 && !other.isToldApart()));
        return names.isEmpty() ? "" : " Not told apart from no influence: " + names + ".";
    }

    private static String names(Stream<Influence> of) {
        return of.map(influence -> influence.variable().name()).collect(Collectors.joining(", "));
    }
}

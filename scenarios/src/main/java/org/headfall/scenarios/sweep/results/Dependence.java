package org.headfall.scenarios.sweep.results;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.scenarios.sweep.figures.KeptFigure;

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
        StringBuilder text = new StringBuilder();
        if (!Double.isNaN(influence.swing().length())) {
            boolean numeric = influence.variable().numeric();
            text.append(value(influence.swing().low()))
                    .append(
                            numeric
                                    ? " where it is low, "
                                    : " with "
                                            + shortText(
                                                    influence, influence.swing().atLow()) + ", ")
                    .append(value(influence.swing().high()))
                    .append(
                            numeric
                                    ? " where it is high, "
                                    : " with "
                                            + shortText(
                                                    influence, influence.swing().atHigh()) + ", ")
                    .append("in the mean")
                    .append(difference(influence));
        }
        if (influence.isLongerWithin()) {
            text.append("; from ")
                    .append(value(influence.groups().least()))
                    .append(" to ")
                    .append(value(influence.groups().greatest()))
                    .append(" in the means of groups along it");
        }
        influence
                .indices()
                .total()
                .ifPresent(total -> text.append(text.isEmpty() ? "" : "; ")
                        .append(Numbers.perCent(total))
                        .append(" of its variance would be left if all else were known (± ")
                        .append(Numbers.perCent(influence.indices().totalError()))
                        .append(" standard error)")
                        .append(
                                influence.indices().contradictThemselves()
                                        ? ", less than its first index, which cannot be: too few samples"
                                        : ""));
        boolean plain =
                influence.words().equals("rises with it") || influence.words().equals("falls with it");
        boolean said = plain || (!influence.variable().numeric() && influence.swings());
        return text + (said ? "." : " (" + influence.words() + ").");
    }

    private static String shortText(Influence influence, double value) {
        return Choices.shortText(influence.variable(), value);
    }

    private String difference(Influence influence) {
        double error = influence.swing().error();
        if (error == 0) {
            return "";
        }
        String difference = " (difference "
                + Numbers.words(influence.swing().high() - influence.swing().low());
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

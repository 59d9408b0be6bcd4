package org.headfall.scenarios.document;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.jspecify.annotations.Nullable;

/**
 * Reads single nodes as texts, quantities, dates and choices. Each method returns null after it has reported a problem.
 */
public final class ValueReader {
    private static final String DATE_FORM = "yyyy-mm-dd";
    private static final String DATE_ALLOWED = "a date as year-month-day, such as 2026-07-01";

    private final Problems problems;

    /**
     * Makes a reader.
     *
     * @param problems receives what is wrong
     */
    public ValueReader(Problems problems) {
        this.problems = problems;
    }

    /** Where problems go. */
    public Problems problems() {
        return problems;
    }

    /**
     * Reads a text that is not blank.
     *
     * @param node the node
     * @param subject its name in messages
     */
    public @Nullable String text(DocumentNode node, String subject) {
        if (!(node instanceof DocumentNode.Scalar scalar)) {
            refuse(node, subject, Finding.of(ProblemKind.WRONG_TYPE, node.form(), "a single value"));
            return null;
        }
        if (scalar.isEmpty()) {
            refuse(node, subject, Finding.of(ProblemKind.EMPTY_VALUE, "nothing", "a single value"));
            return null;
        }
        return scalar.text().strip();
    }

    /**
     * Reads a quantity.
     *
     * @param node the node
     * @param subject its name in messages
     * @param dimension what it has to measure
     * @param range the range it has to lie in
     */
    public @Nullable Quantity quantity(DocumentNode node, String subject, Dimension dimension, AllowedRange range) {
        @Nullable String text = text(node, subject);
        if (text == null) {
            return null;
        }
        try {
            Quantity quantity = QuantityParser.parse(text, dimension);
            if (range.contains(quantity.value())) {
                return quantity;
            }
            String allowed = range.describeFor(quantity);
            refuse(node, subject, Finding.of(ProblemKind.OUT_OF_RANGE, text, allowed));
            return null;
        } catch (QuantityException wrong) {
            refuse(node, subject, wrong.finding());
            return null;
        }
    }

    /**
     * Reads a date.
     *
     * @param node the node
     * @param subject its name in messages
     */
    public @Nullable LocalDate date(DocumentNode node, String subject) {
        @Nullable String text = text(node, subject);
        if (text == null) {
            return null;
        }
        @Nullable LocalDate date = parseDate(text);
        if (date == null) {
            refuse(node, subject, notADate(text));
        }
        return date;
    }

    /**
     * The date of a text, or null if it is none.
     *
     * @param text year-month-day with four, two and two digits
     */
    public static @Nullable LocalDate parseDate(String text) {
        if (!isWrittenAsDate(text)) {
            return null;
        }
        try {
            return LocalDate.of(number(text, 0, 4), number(text, 5, 7), number(text, 8, 10));
        } catch (DateTimeException noSuchDay) {
            return null;
        }
    }

    /** Without a regular expression, for schedules hold thousands. */
    private static boolean isWrittenAsDate(String text) {
        if (text.length() != DATE_FORM.length()) {
            return false;
        }
        for (int i = 0; i < DATE_FORM.length(); i++) {
            char letter = text.charAt(i);
            boolean fits = DATE_FORM.charAt(i) == '-' ? letter == '-' : letter >= '0' && letter <= '9';
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    private static int number(String text, int from, int until) {
        return Integer.parseInt(text, from, until, 10);
    }

    /**
     * What to say of a text that is not a date.
     *
     * @param text the text
     */
    public static Finding notADate(String text) {
        return Finding.of(ProblemKind.NOT_A_DATE, text, DATE_ALLOWED);
    }

    /**
     * Reads one of several words.
     *
     * @param node the node
     * @param subject its name in messages
     * @param choices the words and what they stand for
     */
    public <T> @Nullable T choice(DocumentNode node, String subject, Map<String, T> choices) {
        @Nullable String text = text(node, subject);
        if (text == null) {
            return null;
        }
        @Nullable T chosen = choices.get(text);
        if (chosen == null) {
            refuse(node, subject, notAChoice(text, choices.keySet()));
        }
        return chosen;
    }

    /**
     * What to say of a word that is not one of the choices.
     *
     * @param text the word
     * @param choices the choices
     */
    public static Finding notAChoice(String text, Collection<String> choices) {
        return new Finding(
                ProblemKind.NOT_A_CHOICE, text, String.join(", ", choices), NearestSpelling.of(text, choices));
    }

    /**
     * Reports a problem with a node.
     *
     * @param node the node
     * @param subject its name in messages
     * @param finding what is wrong with it
     */
    public void refuse(DocumentNode node, String subject, Finding finding) {
        problems.add(node.place(), subject, finding);
    }
}

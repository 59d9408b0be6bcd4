package org.headfall.scenarios.report.page;

import java.util.List;

/**
 * The answer as it stands at the head of the page.
 *
 * @param verdict one short sentence: does the field hold
 * @param reason why, where and when, blank if the verdict says all
 * @param tone how the verdict is marked
 * @param sentences what follows from it, one finding a sentence
 * @param figures the numbers that matter
 */
public record Answer(
        Sentence verdict, Sentence reason, Cell.Tone tone, List<Sentence> sentences, List<KeyFigure> figures) {

    /** Copies the lists. */
    public Answer {
        sentences = List.copyOf(sentences);
        figures = List.copyOf(figures);
    }
}

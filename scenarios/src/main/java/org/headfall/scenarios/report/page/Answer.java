package org.headfall.scenarios.report.page;

import java.util.List;

/**
 * The answer as it stands at the head of the page.
 *
 * @param verdict one sentence: does the field hold
 * @param tone how the verdict is marked
 * @param sentences what follows from it, one finding a sentence
 * @param figures the numbers that matter
 */
public record Answer(String verdict, Cell.Tone tone, List<String> sentences, List<KeyFigure> figures) {

    /** Copies the lists. */
    public Answer {
        sentences = List.copyOf(sentences);
        figures = List.copyOf(figures);
    }
}

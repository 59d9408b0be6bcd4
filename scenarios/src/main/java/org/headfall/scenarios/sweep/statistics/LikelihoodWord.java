package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * Words for probabilities in the style of the IPCC's likelihood scale (Mastrandrea and others 2010, Guidance note for lead
 * authors on consistent treatment of uncertainties, table 1), from the most likely to the least.
 */
public enum LikelihoodWord {
    /** More than 99 per cent. */
    VIRTUALLY_CERTAIN("virtually certain", 0.99, "over 99 %"),
    /** More than 90 per cent. */
    VERY_LIKELY("very likely", 0.9, "over 90 %"),
    /** More than 66 per cent. */
    LIKELY("likely", 0.66, "over 66 %"),
    /** From 33 to 66 per cent. */
    AS_LIKELY_AS_NOT("as likely as not", 0.33, "33 to 66 %"),
    /** Less than 33 per cent. */
    UNLIKELY("unlikely", 0.1, "under 33 %"),
    /** Less than 10 per cent. */
    VERY_UNLIKELY("very unlikely", 0, "under 10 %");

    /** Words for what is likelier than this begin beyond their bound, the others with it. */
    private static final double HALF = 0.5;

    private final String words;
    private final double from;
    private final String range;

    LikelihoodWord(String words, double from, String range) {
        this.words = words;
        this.from = from;
        this.range = range;
    }

    /**
     * The word for a probability.
     *
     * @param probability from 0 to 1
     */
    static LikelihoodWord of(double probability) {
        return Arrays.stream(values())
                .filter(word -> word.from > HALF ? probability > word.from : probability >= word.from)
                .findFirst()
                .orElse(VERY_UNLIKELY);
    }

    String words() {
        return words;
    }

    /** The whole scale in a sentence. */
    public static String scale() {
        return Arrays.stream(values())
                .map(word -> word.words + " " + word.range)
                .collect(Collectors.joining(", "));
    }
}

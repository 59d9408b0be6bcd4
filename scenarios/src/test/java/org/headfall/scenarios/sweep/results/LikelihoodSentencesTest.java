package org.headfall.scenarios.sweep.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.headfall.scenarios.sweep.statistics.Share;
import org.junit.jupiter.api.Test;

class LikelihoodSentencesTest {

    /** Intervals by Wilson (1927): 0 of 64 leaves 0 to 5.7 %, 32 of 64 leaves 38.1 to 61.9 %. */
    @Test
    void saysOnceWhatIsEquallyLikely() {
        List<String> sentences = new LikelihoodSentences(List.of(
                        likelihood("Limit a", "", 0, 64),
                        likelihood("Limit b", "", 32, 64),
                        likelihood("Limit c", "", 0, 64)))
                .all();
        assertEquals(
                List.of(
                        "Very unlikely (0 % of 64 runs; sampling leaves 0 % to 6 %): Limit a; Limit c.",
                        "Limit b: as likely as not (50 % of 64 runs; sampling leaves 38 % to 62 %)."),
                sentences);
    }

    @Test
    void putsChoicesOfOneWordTogether() {
        List<String> sentences = new LikelihoodSentences(List.of(
                        likelihood("Limit a", "rate 10 L/s", 0, 64),
                        likelihood("Limit a", "rate 20 L/s", 1, 64),
                        likelihood("Limit a", "rate 30 L/s", 32, 64)))
                .all();
        assertEquals(
                List.of(
                        "Limit a: very unlikely with rate 10 L/s; rate 20 L/s (0 % to 2 % of 64 runs each), as likely as not"
                                + " with rate 30 L/s (50 % of 64 runs; sampling leaves 38 % to 62 %)."),
                sentences);
    }

    /** Where every combination was run a share is no probability, and has no word and no error of sampling. */
    @Test
    void saysSharesWithoutWords() {
        Likelihood share = new Likelihood("Limit a", "", new Share(35, 72), false);
        assertEquals(List.of("Limit a: 49 % of 72 runs."), new LikelihoodSentences(List.of(share)).all());
    }

    private static Likelihood likelihood(String what, String choice, int count, int of) {
        return new Likelihood(what, choice, new Share(count, of), true);
    }
}

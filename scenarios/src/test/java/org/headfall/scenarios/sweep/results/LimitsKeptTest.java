package org.headfall.scenarios.sweep.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.headfall.scenarios.sweep.statistics.Share;
import org.junit.jupiter.api.Test;

class LimitsKeptTest {

    private static final double NONE = Double.NaN;

    @Test
    void leavesOutRunsThatCouldNotBeJudged() {
        double[] floor = {1, NONE, 2, NONE, -1};
        double[] spring = {1, 1, -3, -1, NONE};
        List<double[]> margins = List.of(floor, spring);
        assertEquals(new Share(1, 4), LimitsKept.share(margins, List.of(0, 1, 2, 3, 4)));
        assertEquals(new Share(1, 1), LimitsKept.share(margins, List.of(0, 1)));
        assertEquals(new Share(0, 0), LimitsKept.share(margins, List.of(1)));
    }

    @Test
    void doesNotSayThatALimitIsKeptOrCrossedThatCouldNotBeJudged() {
        RankedChoices.Choice unjudged = choice("A", new Share(0, 0));
        assertEquals(
                " Whether it keeps all limits could not be judged in any of its runs; nor in any run of another choice.",
                LimitsSentence.of(List.of(unjudged, choice("B", new Share(0, 0)))));
        assertEquals(
                " Whether it keeps all limits could not be judged in any of its runs; the best choice that keeps them in"
                        + " each of its runs that could be judged is B.",
                LimitsSentence.of(List.of(unjudged, choice("B", new Share(3, 3)))));
        assertEquals(
                " It keeps all limits in each of its 4 runs.",
                LimitsSentence.of(List.of(choice("A", new Share(4, 4)), unjudged)));
    }

    private static RankedChoices.Choice choice(String name, Share keeps) {
        return new RankedChoices.Choice(name, List.of(0, 1, 2, 3), 1, 0.1, true, keeps);
    }
}

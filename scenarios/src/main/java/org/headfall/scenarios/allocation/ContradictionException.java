package org.headfall.scenarios.allocation;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The wanted total, the minimums of holders and the largest rate contradict each other, whatever limits give way. */
public final class ContradictionException extends RuntimeException {

    private static final long serialVersionUID = 1;

    /**
     * A wish that would have to give way.
     *
     * @param name what is wanted
     * @param wanted how much
     * @param possible how much of it can be had, or has to be allowed, if the other wishes stay
     * @param unit unit of both
     */
    record Wish(String name, double wanted, double possible, String unit) {
        private String words() {
            return String.format(Locale.ROOT, "%s: %.2f %s wanted, %.2f possible", name, wanted, unit, possible);
        }
    }

    ContradictionException(List<Wish> wishes) {
        super(
                wishes.isEmpty()
                        ? "a total and minimums that contradict each other"
                        : wishes.stream().map(Wish::words).collect(Collectors.joining("; ")));
    }
}

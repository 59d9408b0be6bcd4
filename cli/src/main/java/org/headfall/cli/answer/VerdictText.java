package org.headfall.cli.answer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Help.Ansi;

/** Whether the field holds, and which limits are not kept, in words. */
final class VerdictText {

    private static final int MOST_LIMITS = 6;

    private final RunAnswer answer;
    private final TextBlock block;

    VerdictText(RunAnswer answer, TextBlock block) {
        this.answer = answer;
        this.block = block;
    }

    /**
     * Writes the verdict.
     *
     * @param ansi whether it is coloured
     */
    void write(Ansi ansi) {
        String style = switch (answer.verdict()) {
            case HOLDS -> "bold,green";
            case CROSSED -> "bold,red";
            case UNDECIDED, NO_LIMITS -> "bold";
        };
        block.styled(sentence(), line -> ansi.string("@|" + style + " " + line + "|@"));
        if (!answer.limits().isEmpty() && !answer.gridAndBoundaryInHeadError()) {
            String counted = answer.answeredFrom().isPresent() ? "answering from responses" : "time steps and solver";
            block.sentence("Judged with the error of " + counted + " alone: what the grid and far boundaries"
                    + " add was not tested and can be larger (run --doubts finds it).");
        }
        doubtful();
    }

    /** The limits that are not kept for sure, the most wanted first. */
    private void doubtful() {
        List<LimitAnswer> doubtful = withEarliestFirst(answer.limits().stream()
                .filter(limit -> !limit.holds())
                .sorted(LimitAnswer.WORST_FIRST)
                .toList());
        doubtful.stream().limit(MOST_LIMITS).map(VerdictText::limit).forEach(block::item);
        if (doubtful.size() > MOST_LIMITS) {
            block.item("and " + (doubtful.size() - MOST_LIMITS) + " more, see limits.csv");
        }
    }

    /** What is crossed first is what the report begins with; the others stay in their order. */
    private static List<LimitAnswer> withEarliestFirst(List<LimitAnswer> sorted) {
        Optional<LimitAnswer> earliest = sorted.stream()
                .filter(LimitAnswer::crossed)
                .min(Comparator.comparing(limit -> limit.crossedOn().orElse(LocalDate.MAX)));
        List<LimitAnswer> ordered = new ArrayList<>(sorted);
        earliest.ifPresent(first -> {
            ordered.remove(first);
            ordered.add(0, first);
        });
        return ordered;
    }

    private String sentence() {
        List<LimitAnswer> limits = answer.limits();
        List<LimitAnswer> crossed = limits.stream().filter(LimitAnswer::crossed).toList();
        List<LimitAnswer> doubtful =
                limits.stream().filter(limit -> !limit.holds()).toList();
        long all = named(limits);
        int places = limits.size();
        boolean severalPlaces = places > all;
        return switch (answer.verdict()) {
            case NO_LIMITS -> "No limit is set, so nothing is said about whether the field holds.";
            case HOLDS ->
                "The field holds: " + (all == 1 ? "the one limit is kept" : "all " + all + " limits are kept")
                        + (severalPlaces ? " at all " + places + " places." : ".");
            case CROSSED ->
                "The field does not hold: "
                        + (all == 1
                                ? "the one limit is"
                                : named(crossed) + " of " + all + (named(crossed) == 1 ? " limits is" : " limits are"))
                        + " crossed"
                        + (severalPlaces ? " at " + crossed.size() + " of " + places + " places" : "")
                        + besidesCrossed(limits, crossed, severalPlaces) + ".";
            case UNDECIDED ->
                "It is not sure that the field holds: " + (all - named(doubtful)) + " of " + all + " limits are kept"
                        + (severalPlaces
                                ? ", with nothing sure at " + doubtful.size() + " of " + places + " places."
                                : ".");
        };
    }

    /** What became of the limits, or of the places, that are not crossed, so that all of them are counted. */
    private static String besidesCrossed(List<LimitAnswer> limits, List<LimitAnswer> crossed, boolean severalPlaces) {
        if (crossed.size() == limits.size()) {
            return "";
        }
        long unsure = limits.stream()
                .filter(limit -> !limit.holds() && !limit.crossed())
                .count();
        long kept = limits.size() - crossed.size() - unsure;
        String places = severalPlaces ? (kept == 1 ? " at 1 place" : " at " + kept + " places") : "";
        String sure = unsure == 0 ? "" : ", nothing sure can be said of " + unsure;
        return (kept == 0
                        ? ""
                        : severalPlaces ? ", kept" + places : ", " + kept + (kept == 1 ? " is" : " are") + " kept")
                + sure;
    }

    /** A limit that holds at several places is one limit. */
    private static long named(List<LimitAnswer> limits) {
        return limits.stream().map(LimitAnswer::name).distinct().count();
    }

    private static String limit(LimitAnswer limit) {
        return limit.outcome().words() + ": " + limit.name() + ", at " + limit.station()
                + limit.crossedOn().map(date -> ", from " + date).orElse("") + reached(limit)
                + (limit.reason().isEmpty() ? "" : "; " + limit.reason());
    }

    /** The worst value beside the allowed one; empty if there is none. */
    static String reached(LimitAnswer limit) {
        if (limit.worst().isEmpty()) {
            return "";
        }
        double worst = limit.worst().getAsDouble();
        Decimals decimals = Decimals.tellingApart(worst, limit.allowed());
        return "; worst " + decimals.of(worst) + " " + limit.unit()
                + limit.worstOn().map(date -> " on " + date).orElse("") + ", allowed "
                + decimals.of(limit.allowed()) + " " + limit.unit();
    }
}

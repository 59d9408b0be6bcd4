package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.cli.answer.RunAnswer.Effort;
import org.headfall.cli.answer.RunAnswer.Extreme;
import org.headfall.cli.answer.RunAnswer.FlowEnd;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.evidence.Doubt;
import picocli.CommandLine.Help.Ansi;

/** The answer of a run in words and figures, at most 80 columns wide but for the name of the folder. */
public final class AnswerText {

    private static final int MOST_LIMITS = 6;
    private static final double PER_CENT = 100;

    /** Shares below this are shown as this (%): nobody needs to know how far below. */
    private static final double LEAST_PER_CENT = 0.001;

    private static final int FEWEST_DECIMALS = 2;
    private static final int MOST_DECIMALS = 4;

    /** A loss of head that is shown as something (m). */
    private static final double LEAST_SHOWN = 0.005;

    private final RunAnswer answer;
    private final PrintWriter out;
    private final TextBlock block;

    private AnswerText(RunAnswer answer, PrintWriter out) {
        this.answer = answer;
        this.out = out;
        this.block = new TextBlock(out);
    }

    /**
     * Writes an answer.
     *
     * @param answer the answer
     * @param out where to
     * @param ansi whether the verdict is coloured
     */
    public static void write(RunAnswer answer, PrintWriter out, Ansi ansi) {
        AnswerText text = new AnswerText(answer, out);
        text.verdict(ansi);
        text.findings();
        text.trust();
        text.files();
    }

    private void verdict(Ansi ansi) {
        block.sentence(answer.title() + ", " + answer.from() + " to " + answer.until());
        block.blank();
        String style = switch (answer.verdict()) {
            case HOLDS -> "bold,green";
            case CROSSED -> "bold,red";
            case UNDECIDED, NO_LIMITS -> "bold";
        };
        block.styled(verdictSentence(), line -> ansi.string("@|" + style + " " + line + "|@"));
        if (!answer.limits().isEmpty() && !answer.gridAndBoundaryInHeadError()) {
            String counted = answer.answeredFrom().isPresent() ? "answering from responses" : "time steps and solver";
            block.sentence("Judged with the error of " + counted + " alone: what the grid and far boundaries"
                    + " add was not tested and can be larger (run --doubts finds it).");
        }
        List<LimitAnswer> doubtful = answer.limits().stream()
                .filter(limit -> !limit.holds())
                .sorted(LimitAnswer.WORST_FIRST)
                .toList();
        doubtful = withEarliestFirst(doubtful);
        doubtful.stream().limit(MOST_LIMITS).map(AnswerText::limit).forEach(block::item);
        if (doubtful.size() > MOST_LIMITS) {
            block.item("and " + (doubtful.size() - MOST_LIMITS) + " more, see limits.csv");
        }
        block.blank();
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

    private String verdictSentence() {
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
        int decimals = decimals(worst, limit.allowed());
        return "; worst " + number(worst, decimals) + " " + limit.unit()
                + limit.worstOn().map(date -> " on " + date).orElse("") + ", allowed "
                + number(limit.allowed(), decimals) + " " + limit.unit();
    }

    /** As many decimals as it takes to show that a value is not the allowed one. */
    private static int decimals(double worst, double allowed) {
        int decimals = FEWEST_DECIMALS;
        while (decimals < MOST_DECIMALS
                && worst != allowed
                && number(worst, decimals).equals(number(allowed, decimals))) {
            decimals++;
        }
        return decimals;
    }

    private void findings() {
        answer.largestLossOfHead()
                .ifPresent(loss ->
                        block.labelled("Largest loss of head", loss.metres() < LEAST_SHOWN ? "none" : metresAt(loss)));
        // Never "none": a pump that is cut back has no water above its intake, and that is what has to be seen.
        answer.leastWaterAbovePump().ifPresent(least -> block.labelled("Least water above pump", metresAt(least)));
        block.labelled("First to stop flowing", firstToStop(answer.stopFlowing()));
        if (!answer.overEntitlement().isEmpty()) {
            block.labelled("Over entitlement", overEntitlement(answer.overEntitlement()));
        }
        if (!answer.unmetRates().isEmpty()) {
            block.labelled("Not as asked", notAsAsked(answer.unmetRates()));
        }
        block.labelled(
                "Not confined",
                answer.cellsNotConfined() == 0
                        ? answer.answeredFrom().isPresent() ? "looked at only at bores, springs and points" : "nowhere"
                        : String.format(
                                Locale.ROOT,
                                "%,d of %,d cells: head falls below the aquifer top; see the report",
                                answer.cellsNotConfined(),
                                answer.effort().cells()));
    }

    private static String notAsAsked(List<Doubt> unmet) {
        Doubt first = unmet.get(0);
        return first.subject() + " " + first.statement()
                + (unmet.size() == 1 ? "" : " And " + (unmet.size() - 1) + " more, see the report.");
    }

    private static String overEntitlement(List<AccountSummary> over) {
        AccountSummary first = over.get(0);
        return first.name() + " in " + first.yearsOver() + " of " + first.years() + " water years, "
                + number(first.countedMegalitres()) + " of " + number(first.entitlementMegalitres()) + " ML from "
                + first.worstFrom()
                + (over.size() == 1 ? "" : "; and " + (over.size() - 1) + " more, see accounts.csv");
    }

    private static String metresAt(Extreme extreme) {
        return number(extreme.metres()) + " m at " + extreme.station() + " on " + extreme.on();
    }

    private static String firstToStop(List<FlowEnd> ends) {
        if (ends.isEmpty()) {
            return "none stops";
        }
        long springs = ends.stream().filter(FlowEnd::spring).count();
        String all = Stream.of(count(ends.size() - springs, "bore"), count(springs, "spring"))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" and "));
        return ends.get(0).station() + " on " + ends.get(0).on()
                + (ends.size() == 1 ? "" : "; in all " + all + " stop, some for a time only");
    }

    /** Such as "3 springs"; empty for none. */
    private static String count(long number, String thing) {
        return number == 0 ? "" : number + " " + thing + (number == 1 ? "" : "s");
    }

    private void trust() {
        if (answer.answeredFrom().isPresent()) {
            block.labelled("Answered from", answer.answeredFrom().get());
            block.labelled(
                    "Error of heads",
                    String.format(
                            Locale.ROOT,
                            "%.3f m at most by this; not that of the grid",
                            answer.headErrorMetres().orElse(Double.NaN)));
            effort();
            return;
        }
        answer.simulatedBecause().ifPresent(reason -> block.labelled("Simulated because", reason));
        if (answer.headErrorMetres().isPresent()) {
            block.labelled(
                    "Error of heads",
                    String.format(
                            Locale.ROOT,
                            "%.3f m at most %s; see the report",
                            answer.headErrorMetres().getAsDouble(),
                            errorOf()));
        }
        Effort effort = answer.effort();
        block.labelled(
                "Water balance",
                String.format(
                        Locale.ROOT,
                        "closes within %.3f %% of what passed, %s",
                        Math.max(LEAST_PER_CENT, PER_CENT * answer.balanceDiscrepancy()),
                        effort.superposed() ? "from grid to grid" : "every step"));
        if (!effort.solvedBy().isEmpty()) {
            block.labelled("Heads found", effort.solvedBy());
        }
        answer.bedAdjusts().ifPresent(time -> block.labelled("Sealing bed", "adjusts to a change of head in " + time));
        block.labelled(
                "Grid and steps", String.format(Locale.ROOT, "%,d cells, %,d steps", effort.cells(), effort.steps()));
        effort();
    }

    private String errorOf() {
        if (answer.gridAndBoundaryInHeadError()) {
            return "in all";
        }
        return answer.effort().superposed() ? "by superposition" : "by time stepping";
    }

    private void effort() {
        Effort effort = answer.effort();
        block.labelled(
                "Time and memory",
                String.format(
                        Locale.ROOT,
                        "%.1f s, %,.0f MiB, %s",
                        effort.seconds(),
                        effort.peakMemoryMebibytes(),
                        effort.processors() == 1 ? "1 processor" : effort.processors() + " processors"));
    }

    private void files() {
        block.blank();
        out.println("Written to " + TextBlock.printable(answer.folder()));
        List<String> named =
                answer.files().stream().filter(file -> !file.endsWith(".tif")).toList();
        int rasters = answer.files().size() - named.size();
        block.item(String.join(", ", named) + (rasters == 0 ? "" : ", and " + rasters + " rasters (*.tif)"));
        block.sentence("Figures of a model, no approval: the authority and licensed practice decide.");
    }

    private static String number(double value) {
        return number(value, FEWEST_DECIMALS);
    }

    /** A minus sign before nothing but zeros is left out. */
    private static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0\\.0+") ? text.substring(1) : text;
    }
}

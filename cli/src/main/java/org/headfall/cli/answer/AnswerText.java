package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
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

    private static final double PER_CENT = 100;

    /** Shares below this are shown as this (%): nobody needs to know how far below. */
    private static final double LEAST_PER_CENT = 0.001;

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
        new VerdictText(answer, block).write(ansi);
        block.blank();
    }

    private void findings() {
        answer.largestLossOfHead()
                .ifPresent(loss ->
                        block.labelled("Largest loss of head", loss.metres() < LEAST_SHOWN ? "none" : metresAt(loss)));
        // Never "none": a pump that is cut back has no water above its intake, and that is what has to be seen.
        answer.leastWaterAbovePump().ifPresent(least -> block.labelled("Least water above pump", metresAt(least)));
        block.labelled("First to stop flowing", firstToStop());
        if (!answer.neverFlow().isEmpty()) {
            block.labelled("Never flowing", firstOf(answer.neverFlow()));
        }
        if (!answer.overEntitlement().isEmpty()) {
            block.labelled("Over entitlement", overEntitlement(answer.overEntitlement()));
        }
        if (!answer.unmetRates().isEmpty()) {
            block.labelled("Not as asked", firstOf(answer.unmetRates()));
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

    private static String firstOf(List<Doubt> doubts) {
        Doubt first = doubts.get(0);
        return first.subject() + " " + first.statement()
                + (doubts.size() == 1 ? "" : " And " + (doubts.size() - 1) + " more, see the report.");
    }

    private static String overEntitlement(List<AccountSummary> over) {
        AccountSummary first = over.get(0);
        return first.name() + " in " + first.yearsOver() + " of " + first.years() + " water years, "
                + Decimals.two(first.countedMegalitres()) + " of " + Decimals.two(first.entitlementMegalitres())
                + " ML from "
                + first.worstFrom()
                + (over.size() == 1 ? "" : "; and " + (over.size() - 1) + " more, see accounts.csv");
    }

    private static String metresAt(Extreme extreme) {
        return Decimals.two(extreme.metres()) + " m at " + extreme.station() + " on " + extreme.on();
    }

    private String firstToStop() {
        List<FlowEnd> ends = answer.stopFlowing();
        if (ends.isEmpty()) {
            return answer.neverFlow().isEmpty() ? "none stops" : "none that ever flows stops";
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
}

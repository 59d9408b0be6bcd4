package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.LimitOutcome.Verdict;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.content.SiteState;
import org.jspecify.annotations.Nullable;

/** Makes the answer from the content: a verdict, the numbers that matter, and one sentence a finding. */
final class AnswerSentences {

    private final ReportContent content;
    private final LocalDate end;

    private AnswerSentences(ReportContent content) {
        this.content = content;
        this.end = content.heading().end();
    }

    static Answer of(ReportContent content) {
        return new AnswerSentences(content).answer();
    }

    private Answer answer() {
        List<LimitOutcome> crossed = content.limits().stream()
                .filter(limit -> limit.verdict() == Verdict.CROSSED)
                .toList();
        List<String> sentences = new ArrayList<>();
        closestLimit().ifPresent(sentences::add);
        flowEnds().ifPresent(sentences::add);
        cutBack().ifPresent(sentences::add);
        List<KeyFigure> figures = new ArrayList<>();
        largestLoss().ifPresent(figures::add);
        limitFigure(crossed).ifPresent(figures::add);
        leastWaterAboveIntake().ifPresent(figures::add);
        return new Answer(verdict(crossed), tone(crossed), sentences, figures);
    }

    private Cell.Tone tone(List<LimitOutcome> crossed) {
        if (!crossed.isEmpty()) {
            return Cell.Tone.BAD;
        }
        if (content.limits().isEmpty()) {
            return Cell.Tone.PLAIN;
        }
        return content.limits().stream().allMatch(AnswerSentences::holds) ? Cell.Tone.GOOD : Cell.Tone.CLOSE;
    }

    private String verdict(List<LimitOutcome> crossed) {
        int all = content.limits().size();
        if (all == 0) {
            return "No limit was set, so this report gives changes up to " + Words.date(end)
                    + " and does not say whether they are acceptable.";
        }
        long hold = content.limits().stream().filter(AnswerSentences::holds).count();
        if (crossed.isEmpty() && hold < all) {
            return hold + " of " + Words.count(all, "limit", "limits") + " hold until " + Words.date(end)
                    + "; of the others nothing sure can be said.";
        }
        if (crossed.isEmpty()) {
            return all == 1
                    ? "The limit that was set holds until " + Words.date(end) + "."
                    : "All " + all + " limits hold until " + Words.date(end) + ".";
        }
        LimitOutcome first = crossed.stream()
                .min(Comparator.comparing(AnswerSentences::crossing))
                .orElseThrow();
        String which = quoted(first) + " at " + first.site();
        return crossed.size() == 1
                ? "One of " + Words.count(all, "limit", "limits") + " is crossed: " + which + ", from "
                        + Words.date(crossing(first)) + "."
                : crossed.size() + " of " + all + " limits are crossed, the first on " + Words.date(crossing(first))
                        + ": " + which + ".";
    }

    private static String on(@Nullable LocalDate date) {
        return date == null ? "" : " on " + Words.date(date);
    }

    private static boolean holds(LimitOutcome limit) {
        return limit.verdict() == Verdict.HOLDS;
    }

    private static String quoted(LimitOutcome limit) {
        return "\u201c" + limit.name() + "\u201d";
    }

    private static LocalDate crossing(LimitOutcome limit) {
        return limit.crossedOn() == null ? LocalDate.MAX : limit.crossedOn();
    }

    private Optional<String> closestLimit() {
        return content.limits().stream()
                .filter(AnswerSentences::holds)
                .min(Comparator.comparingDouble(limit -> limit.margin() / Math.max(1e-9, Math.abs(limit.allowed()))))
                .map(limit -> "Of the limits that hold, the closest is " + quoted(limit) + " at " + limit.site() + ": "
                        + limit.quantity() + " reaches "
                        + Words.withError(limit.reached(), limit.error(), limit.unit()) + on(limit.reachedOn()) + ", "
                        + Words.number(limit.allowed(), 2) + "\u00a0" + limit.unit() + " is allowed.");
    }

    private Optional<String> flowEnds() {
        List<ArtesianHead> ends = content.artesianHeads().stream()
                .filter(head -> head.stopsFlowing() != null)
                .sorted(Comparator.comparing(AnswerSentences::flowEnd))
                .toList();
        if (ends.isEmpty()) {
            return Optional.empty();
        }
        ArtesianHead first = ends.get(0);
        if (ends.size() == 1) {
            return Optional.of(first.site() + " stops flowing by itself on " + Words.date(flowEnd(first))
                    + ", at least for a time.");
        }
        long springs = ends.stream().filter(this::isSpring).count();
        return Optional.of(boresAndSprings(ends.size() - springs, springs)
                + " stop flowing by themselves, at least for a time; the first is " + first.site() + ", on "
                + Words.date(flowEnd(first)) + ".");
    }

    private static String boresAndSprings(long bores, long springs) {
        List<String> parts = new ArrayList<>();
        if (bores > 0) {
            parts.add(Words.count(bores, "bore", "bores"));
        }
        if (springs > 0) {
            parts.add(Words.count(springs, "spring", "springs"));
        }
        String text = Words.list(parts);
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private boolean isSpring(ArtesianHead head) {
        return content.sites().stream()
                .anyMatch(site -> site.kind() == SiteKind.SPRING && site.name().equals(head.site()));
    }

    private static LocalDate flowEnd(ArtesianHead head) {
        return head.stopsFlowing() == null ? LocalDate.MAX : head.stopsFlowing();
    }

    private Optional<String> cutBack() {
        List<String> names = content.sites().stream()
                .filter(site -> site.states().contains(SiteState.CUT_BACK))
                .map(Site::name)
                .toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(Words.list(names) + " cannot give all that is asked of "
                        + (names.size() == 1 ? "it" : "them") + ": the water level reaches the lowest level allowed.");
    }

    private record Worst(String site, ArtesianHead.Loss loss) {}

    private List<Worst> extremes() {
        return content.artesianHeads().stream()
                .flatMap(head -> head.extremes().stream().map(loss -> new Worst(head.site(), loss)))
                .toList();
    }

    private Optional<KeyFigure> largestLoss() {
        return extremes().stream()
                .filter(worst -> Double.isFinite(worst.loss().loss()))
                .max(Comparator.comparingDouble(worst -> worst.loss().loss()))
                .map(worst -> new KeyFigure(
                        Words.metres(worst.loss().loss()),
                        "largest loss of head",
                        worst.site() + ", " + Words.date(worst.loss().date()) + errorRemark(),
                        Cell.Tone.PLAIN));
    }

    private Optional<KeyFigure> limitFigure(List<LimitOutcome> crossed) {
        int all = content.limits().size();
        long hold = content.limits().stream().filter(AnswerSentences::holds).count();
        return all == 0
                ? Optional.empty()
                : Optional.of(
                        new KeyFigure(hold + " of " + all, "limits hold", "until " + Words.date(end), tone(crossed)));
    }

    private Optional<KeyFigure> leastWaterAboveIntake() {
        return extremes().stream()
                .filter(worst -> Double.isFinite(worst.loss().aboveIntake()))
                .min(Comparator.comparingDouble(worst -> worst.loss().aboveIntake()))
                .map(worst -> new KeyFigure(
                        Words.metres(worst.loss().aboveIntake()),
                        "least water above a pump intake",
                        worst.site() + ", " + Words.date(worst.loss().date()) + errorRemark(),
                        worst.loss().aboveIntake() > 0 ? Cell.Tone.PLAIN : Cell.Tone.BAD));
    }

    private String errorRemark() {
        double error = content.headError();
        return Double.isFinite(error)
                ? "; numerical error \u00b1\u00a0" + Words.number(Math.max(error, 0.01), 2) + "\u00a0m"
                : "; numerical error not estimated";
    }
}

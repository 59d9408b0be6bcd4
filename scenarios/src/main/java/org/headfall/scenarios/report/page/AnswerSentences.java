package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.content.SiteState;
import org.jspecify.annotations.Nullable;

/** Makes the answer from the content: a verdict, the numbers that matter, and one sentence a finding. */
final class AnswerSentences {

    /** What stands beside a verdict and at the limits as long as nobody has tested grid and boundaries. */
    static final String UNTESTED =
            "The errors given count time steps and solver alone: what the grid and far boundaries"
                    + " add was not tested and can be larger (run --doubts finds it).";

    private final ReportContent content;
    private final LocalDate end;
    private final List<LimitOutcome> crossed;
    private final LimitCounts counts;

    private AnswerSentences(ReportContent content) {
        this.content = content;
        this.end = content.heading().end();
        this.crossed = content.limits().stream()
                .filter(limit -> limit.verdict() == Outcome.Kind.CROSSED)
                .sorted(Comparator.comparing(AnswerSentences::crossing))
                .toList();
        this.counts = LimitCounts.of(content.limits());
    }

    static Answer of(ReportContent content) {
        return new AnswerSentences(content).answer();
    }

    private Answer answer() {
        List<Sentence> sentences = new ArrayList<>();
        closestLimit().ifPresent(sentences::add);
        flowEnds().ifPresent(sentences::add);
        cutBack().ifPresent(sentences::add);
        largestCause().ifPresent(sentences::add);
        WaterSources.of(content.balance()).ifPresent(sources -> sentences.add(sources.sentence()));
        List<KeyFigure> figures = new ArrayList<>();
        largestLoss().ifPresent(figures::add);
        limitFigure().ifPresent(figures::add);
        leastWaterAboveIntake().ifPresent(figures::add);
        return new Answer(Sentence.of(verdict()), reason(), tone(), sentences, figures);
    }

    private Cell.Tone tone() {
        if (!crossed.isEmpty()) {
            return Cell.Tone.BAD;
        }
        if (content.limits().isEmpty()) {
            return Cell.Tone.PLAIN;
        }
        return counts.allHold() ? Cell.Tone.GOOD : Cell.Tone.CLOSE;
    }

    private String verdict() {
        if (content.limits().isEmpty()) {
            return "No limit was set.";
        }
        if (!crossed.isEmpty()) {
            return "The field does not hold.";
        }
        return counts.allHold()
                ? "The field holds until " + Words.date(end) + "."
                : "It is not sure that the field holds.";
    }

    private Sentence reason() {
        if (content.limits().isEmpty()) {
            return Sentence.of("This report gives changes up to " + Words.date(end)
                    + " and does not say whether they are acceptable.");
        }
        if (crossed.isEmpty()) {
            return withUntested(Sentence.of(counts.kept(Words.date(end))));
        }
        LimitOutcome first = crossed.get(0);
        return withUntested(Sentence.of(counts.crossed() + quoted(first) + ", at " + first.site() + from(first)
                        + ". There " + first.quantity() + " reaches ")
                .and(Quantity.ofLimit(first.unit()), first.reached(), first.error())
                .and(on(first.reachedOn()) + "; ")
                .and(Quantity.ofLimit(first.unit()), first.allowed())
                .and(" is allowed." + counts.besidesCrossed()));
    }

    /** A verdict must not look surer than it is. */
    private Sentence withUntested(Sentence sentence) {
        return content.headDoubts().isEmpty() ? sentence.and(" " + UNTESTED) : sentence;
    }

    private static String from(LimitOutcome limit) {
        return limit.crossedOn() == null ? "" : ", from " + Words.date(limit.crossedOn());
    }

    private static String on(@Nullable LocalDate date) {
        return date == null ? "" : " on " + Words.date(date);
    }

    private static String quoted(LimitOutcome limit) {
        return "\u201c" + limit.name() + "\u201d";
    }

    private static LocalDate crossing(LimitOutcome limit) {
        return limit.crossedOn() == null ? LocalDate.MAX : limit.crossedOn();
    }

    private Optional<Sentence> closestLimit() {
        return content.limits().stream()
                .filter(limit -> limit.verdict() == Outcome.Kind.HOLDS)
                .min(Comparator.comparingDouble(LimitOutcome::relativeMargin))
                .map(limit -> Sentence.of("Of the limits that are kept, the closest is " + quoted(limit) + ", at "
                                + limit.site() + ": " + limit.quantity() + " reaches ")
                        .and(Quantity.ofLimit(limit.unit()), limit.reached(), limit.error())
                        .and(on(limit.reachedOn()) + ", ")
                        .and(Quantity.ofLimit(limit.unit()), limit.allowed())
                        .and(" is allowed."));
    }

    private Optional<Sentence> flowEnds() {
        List<ArtesianHead> ends = content.artesianHeads().stream()
                .filter(head -> head.stopsFlowing() != null)
                .sorted(Comparator.comparing(AnswerSentences::flowEnd))
                .toList();
        if (ends.isEmpty()) {
            return Optional.empty();
        }
        ArtesianHead first = ends.get(0);
        String when = first.site() + ", on " + Words.date(flowEnd(first));
        if (ends.size() == 1) {
            return Optional.of(headKnown(Sentence.of("One place stops flowing by itself, at least for a time: " + when))
                    .and("."));
        }
        long springs = ends.stream().filter(this::isSpring).count();
        return Optional.of(headKnown(Sentence.of(boresAndSprings(ends.size() - springs, springs)
                        + " stop flowing by themselves, at least for a time; the first is " + when))
                .and("."));
    }

    /** A date on which head falls below a level is no better than the head. */
    private Sentence headKnown(Sentence sentence) {
        return Double.isFinite(content.headError())
                ? sentence.and(" (numerical error of head ")
                        .andError(Quantity.HEIGHT, content.headError())
                        .and(")")
                : sentence.and(" (numerical error of head not estimated)");
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

    private Optional<Sentence> cutBack() {
        List<String> names = content.sites().stream()
                .filter(site -> site.states().contains(SiteState.CUT_BACK))
                .map(Site::name)
                .toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(Sentence.of(Words.list(names) + " cannot give all that is asked of "
                        + (names.size() == 1 ? "it" : "them") + ": the water level reaches the lowest level allowed."));
    }

    /** Who does most where the first limit is crossed. */
    private Optional<Sentence> largestCause() {
        if (crossed.isEmpty() || content.interference().isEmpty()) {
            return Optional.empty();
        }
        Interference last = content.interference().get(content.interference().size() - 1);
        String site = crossed.get(0).site();
        return last.rows().stream()
                .filter(row -> row.site().equals(site))
                .findFirst()
                .flatMap(row -> largestCause(last, row));
    }

    private Optional<Sentence> largestCause(Interference last, Interference.Row row) {
        int most = 0;
        for (int cause = 1; cause < row.drawdowns().size(); cause++) {
            most = row.drawdowns().get(cause) > row.drawdowns().get(most) ? cause : most;
        }
        String cause = last.causes().get(most);
        return row.whole() <= 0 || row.drawdowns().get(most) <= 0
                ? Optional.empty()
                : Optional.of(Sentence.of("At " + row.site() + " head has fallen by ")
                        .and(Quantity.HEIGHT, row.whole(), content.headError())
                        .and(on(last.date()) + "; the largest single cause is "
                                + (cause.equals(row.site()) ? "its own taking" : cause) + " with ")
                        .and(Quantity.HEIGHT, row.drawdowns().get(most), content.headError())
                        .and("."));
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
                        Sentence.of("").and(Quantity.HEIGHT, worst.loss().loss()),
                        "largest loss of head",
                        detail(worst),
                        Cell.Tone.PLAIN));
    }

    private Optional<KeyFigure> limitFigure() {
        return content.limits().isEmpty()
                ? Optional.empty()
                : Optional.of(new KeyFigure(
                        Sentence.of(counts.keptOfAll()),
                        counts.named() == 1 ? "limit is kept" : "limits are kept",
                        Sentence.of("until " + Words.date(end) + counts.detail()),
                        tone()));
    }

    private Optional<KeyFigure> leastWaterAboveIntake() {
        return extremes().stream()
                .filter(worst -> Double.isFinite(worst.loss().aboveIntake()))
                .min(Comparator.comparingDouble(worst -> worst.loss().aboveIntake()))
                .map(worst -> new KeyFigure(
                        Sentence.of("").and(Quantity.HEIGHT, worst.loss().aboveIntake()),
                        "least water above a pump",
                        detail(worst),
                        worst.loss().aboveIntake() > 0 ? Cell.Tone.PLAIN : Cell.Tone.BAD));
    }

    private Sentence detail(Worst worst) {
        Sentence where =
                Sentence.of(worst.site() + ", " + Words.date(worst.loss().date()));
        return Double.isFinite(content.headError())
                ? where.and("; numerical error ").andError(Quantity.HEIGHT, content.headError())
                : where.and("; numerical error not estimated");
    }
}

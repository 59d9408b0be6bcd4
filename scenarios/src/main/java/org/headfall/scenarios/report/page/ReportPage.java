package org.headfall.scenarios.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.ReportContent;

/**
 * What the template shows.
 *
 * @param content the content it was made from
 * @param answer the answer at the head of the page
 * @param limits outcomes of the limits
 * @param accounts water years against entitlements
 * @param artesianHead losses of head
 * @param recovery what becomes of drawdown when taking stops
 * @param interference tables of interference, the latest date first
 * @param attribution whom drawdown is put down to, and lost discharge where anything flows; empty without such a table
 * @param sites bores and springs
 * @param headDoubts error budget of heads
 * @param balance tables of the water balance
 * @param measured measured beside computed heads
 * @param fit how well they meet, empty without measured heads
 * @param assumptions what is taken for granted
 * @param checklist what a reviewer looks for
 * @param sources where the water comes from, empty without a balance
 * @param data JSON for the figures
 * @param parts scripts and styles
 */
public record ReportPage(
        ReportContent content,
        Answer answer,
        PageTable limits,
        PageTable accounts,
        PageTable artesianHead,
        PageTable recovery,
        List<PageTable> interference,
        List<AttributionTables.Part> attribution,
        PageTable sites,
        PageTable headDoubts,
        List<PageTable> balance,
        PageTable measured,
        Optional<Sentence> fit,
        PageTable assumptions,
        PageTable checklist,
        Optional<WaterSources> sources,
        String data,
        PageParts parts) {

    /** Makes the page of a content. */
    public static ReportPage of(ReportContent content) {
        List<PageTable> interference = new ArrayList<>();
        for (int i = content.interference().size() - 1; i >= 0; i--) {
            interference.add(ResultTables.interference(content.interference().get(i), i + 1));
        }
        return new ReportPage(
                content,
                AnswerSentences.of(content),
                ResultTables.limits(content),
                AccountTable.of(content.accounts()),
                ResultTables.artesianHead(content),
                RecoveryTable.of(content.recoveries()),
                List.copyOf(interference),
                AttributionTables.of(content.attribution()),
                ResultTables.sites(content),
                HeadDoubtTable.of(content.headDoubts()),
                List.of(BalanceTables.byInterval(content), BalanceTables.byName(content)),
                FitTable.of(content.measured()),
                FitTable.sentence(content.measured()),
                EvidenceTables.assumptions(content.evidence().assumptions()),
                EvidenceTables.checklist(content.evidence().checklist()),
                WaterSources.of(content.balance()),
                PageData.of(content),
                PageParts.load());
    }

    /** "1 July 2026 to 1 July 2076". */
    public String period() {
        return Words.date(content.heading().start()) + " to "
                + Words.date(content.heading().end());
    }

    /** What the numerical errors of limits leave out, as a sentence; blank if grid and boundaries were tested. */
    public String untested() {
        return content.headDoubts().isEmpty() ? AnswerSentences.UNTESTED : "";
    }

    /** The end of the period in words. */
    public String end() {
        return Words.date(content.heading().end());
    }

    /** Where the water comes from and how well the balance closes. */
    public List<Sentence> balanceSentences() {
        return sources.map(known -> List.of(known.sentence(), Sentence.of(known.closure())))
                .orElse(List.of());
    }

    /** How the tables of interference were computed, each wording once. */
    public List<String> interferenceMethods() {
        return content.interference().stream()
                .map(Interference::method)
                .filter(method -> !method.isBlank())
                .distinct()
                .toList();
    }
}

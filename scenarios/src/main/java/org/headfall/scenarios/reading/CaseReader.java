package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.CaseSpecification;
import org.headfall.scenarios.scenario.CaseSpecification.Taking;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads cases: {@code [existing as used, with the proposal, after taking stops on 2046-07-01]}. */
final class CaseReader {
    private static final Pattern STOPPING = Pattern.compile("after taking stops on (.*)");
    private static final List<String> WORDS = Arrays.stream(Taking.values())
            .map(taking -> taking == Taking.STOPPING ? "after taking stops on a date" : taking.words())
            .toList();

    private final @Nullable Period period;
    private final KnownBores bores;

    CaseReader(@Nullable Period period, KnownBores bores) {
        this.period = period;
        this.bores = bores;
    }

    List<CaseSpecification> read(Section document) {
        List<CaseSpecification> cases = new ArrayList<>();
        for (DocumentNode node : document.optionalList("cases")) {
            @Nullable String text = document.values().text(node, "cases");
            @Nullable CaseSpecification one = text == null ? null : one(document, node, text);
            if (one != null && cases.stream().anyMatch(other -> other.taking() == one.taking())) {
                refuse(document, node, Finding.of(ProblemKind.DUPLICATE_NAME, one.name(), "each case once"));
            } else if (one != null) {
                cases.add(one);
            }
        }
        return cases;
    }

    private @Nullable CaseSpecification one(Section document, DocumentNode node, String text) {
        Matcher stopping = STOPPING.matcher(text);
        if (stopping.matches()) {
            @Nullable LocalDate stop = stop(document, node, stopping.group(1));
            return stop == null ? null : new CaseSpecification(Taking.STOPPING, Optional.of(stop), node.place());
        }
        Optional<Taking> taking = Arrays.stream(Taking.values())
                .filter(one -> one != Taking.STOPPING && one.words().equals(text))
                .findFirst();
        if (taking.isEmpty()) {
            refuse(document, node, ValueReader.notAChoice(text, WORDS));
            return null;
        }
        requireItsBores(document, node, taking.get());
        return new CaseSpecification(taking.get(), Optional.empty(), node.place());
    }

    private @Nullable LocalDate stop(Section document, DocumentNode node, String text) {
        @Nullable LocalDate stop = ValueReader.parseDate(text);
        if (stop == null) {
            refuse(document, node, ValueReader.notADate(text));
        } else if (period != null && (!stop.isAfter(period.from()) || !stop.isBefore(period.until()))) {
            refuse(
                    document,
                    node,
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            stop.toString(),
                            "a date after " + period.from() + " and before " + period.until()));
        }
        return stop;
    }

    private void requireItsBores(Section document, DocumentNode node, Taking taking) {
        if (taking.needsProposal() && !bores.hasProposal()) {
            refuse(
                    document,
                    node,
                    Finding.of(
                            ProblemKind.NOT_A_CHOICE,
                            taking.words() + ", but no bore is proposed",
                            "cases without a proposal, or a bore of the group proposed"));
        }
        if (taking.needsEntitlements() && !bores.hasEntitlements()) {
            refuse(
                    document,
                    node,
                    Finding.of(
                            ProblemKind.NOT_A_CHOICE,
                            taking.words() + ", but no existing bore has an entitlement",
                            "cases of what is used, or existing bores with an entitlement"));
        }
    }

    private static void refuse(Section document, DocumentNode node, Finding finding) {
        document.values().refuse(node, "cases", finding);
    }
}

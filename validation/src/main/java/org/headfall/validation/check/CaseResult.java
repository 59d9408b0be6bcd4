package org.headfall.validation.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What came of a case.
 *
 * @param validationCase the case
 * @param verdict whether it holds
 * @param comparisons published numbers beside ours
 * @param plots ours over published
 * @param misprints wrong numbers found in the source
 * @param notes remarks
 * @param seconds time it took (s)
 */
public record CaseResult(
        ValidationCase validationCase,
        Verdict verdict,
        List<Comparison> comparisons,
        List<Plot> plots,
        List<Misprint> misprints,
        List<String> notes,
        double seconds) {

    /** Whether a case holds. */
    public enum Verdict {
        /** Every comparison is within its tolerance. */
        PASSED("passed"),
        /** A comparison is outside its tolerance, or the run broke off. */
        FAILED("failing"),
        /** Something outside the project is missing. */
        SKIPPED("skipped");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** The verdict in a word. */
        public String words() {
            return words;
        }
    }

    /** Result of a case that ran to its end. A case that compares nothing shows nothing and fails. */
    static CaseResult of(ValidationCase validationCase, Findings findings, double seconds) {
        boolean holds = !findings.comparisons().isEmpty()
                && findings.comparisons().stream().allMatch(Comparison::holds);
        Verdict verdict = holds ? Verdict.PASSED : Verdict.FAILED;
        return with(validationCase, verdict, findings, seconds);
    }

    /** Result of a case that could not be run here. */
    static CaseResult skipped(ValidationCase validationCase, String reason) {
        Findings findings = new Findings();
        findings.note("Not run: " + reason);
        return with(validationCase, Verdict.SKIPPED, findings, 0);
    }

    /** Result of a case that broke off. */
    static CaseResult broken(
            ValidationCase validationCase, Findings findings, RuntimeException failure, double seconds) {
        findings.note("Broke off: " + failure);
        return with(validationCase, Verdict.FAILED, findings, seconds);
    }

    private static CaseResult with(ValidationCase validationCase, Verdict verdict, Findings findings, double seconds) {
        return new CaseResult(
                validationCase,
                verdict,
                findings.comparisons(),
                findings.plots(),
                findings.misprints(),
                findings.notes(),
                seconds);
    }

    /** Comparisons outside their tolerance. */
    public List<Comparison> failures() {
        return comparisons.stream().filter(comparison -> !comparison.holds()).toList();
    }

    /** The comparison that comes nearest to its tolerance, or exceeds it most. */
    public Optional<Comparison> tightest() {
        return comparisons.stream().max(Comparator.comparingDouble(Comparison::strain));
    }

    /** The case, its sources and all that is wrong, for the message of a failed test. */
    public String explanation() {
        StringBuilder text = new StringBuilder(validationCase.title()).append(" - source:");
        validationCase
                .sources()
                .forEach(source -> text.append(' ')
                        .append(source.brief())
                        .append(", ")
                        .append(source.title())
                        .append(", ")
                        .append(source.place())
                        .append(';'));
        notes.forEach(note -> text.append(System.lineSeparator()).append("  ").append(note));
        failures()
                .forEach(failure ->
                        text.append(System.lineSeparator()).append("  ").append(failure));
        return text.toString();
    }
}

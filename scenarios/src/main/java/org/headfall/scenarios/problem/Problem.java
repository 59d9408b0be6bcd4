package org.headfall.scenarios.problem;

import org.jspecify.annotations.Nullable;

/**
 * One thing that is wrong with the input.
 *
 * @param place where it stands
 * @param subject name of the thing concerned: a key, a column, a file, a bore
 * @param finding what is wrong with it
 */
public record Problem(Place place, String subject, Finding finding) implements Comparable<Problem> {
    /** Makes the subject fit for a line of a terminal or a log. */
    public Problem {
        subject = Finding.printable(subject);
    }

    /** The kind of problem. */
    public ProblemKind kind() {
        return finding.kind();
    }

    /** Orders problems as the user meets them when reading: by file, line and column. */
    @Override
    public int compareTo(Problem other) {
        return place.compareTo(other.place);
    }

    /** One line: place, what is wrong, what was found, what is allowed, what was probably meant. */
    @Override
    public String toString() {
        @Nullable String suggestion = finding.suggestion();
        String meant = suggestion == null ? "" : "; did you mean " + suggestion + "?";
        if (isKeyOfSection()) {
            return place + ": " + finding.found() + " is not a key of " + section() + "; keys are " + finding.allowed()
                    + meant;
        }
        String allowed = kind() == ProblemKind.MISSING_KEY ? "; needed: " : "; allowed: ";
        return place + ": " + subject + " " + finding.kind().summary() + ": found " + finding.found() + allowed
                + finding.allowed() + meant;
    }

    /** Whether a key was found that its section does not know; the subject then ends with it. */
    private boolean isKeyOfSection() {
        return kind() == ProblemKind.UNKNOWN_KEY
                && (subject.equals(finding.found()) || subject.endsWith("." + finding.found()));
    }

    private String section() {
        int end = subject.length() - finding.found().length() - 1;
        return end <= 0 ? "the document" : subject.substring(0, end);
    }
}

package org.headfall.scenarios.problem;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Collects every problem of a scenario and its files.
 *
 * <p>Of each kind in each file the first {@value #LISTED_PER_FILE_AND_KIND} are kept and the others counted: a table
 * with a million bad rows is as readable, and costs as little memory, as one with twenty. Not safe for several threads.
 */
public final class Problems {
    /** How many problems of one kind are listed for one file. */
    public static final int LISTED_PER_FILE_AND_KIND = 20;

    private static final int LISTED_NOTICES = 100;

    private final List<Problem> listed = new ArrayList<>();
    private final Map<Source, Long> counts = new LinkedHashMap<>();
    private final List<Notice> notices = new ArrayList<>();
    private long count;

    /** Problems of one kind in one file. */
    private record Source(String file, ProblemKind kind) {}

    /**
     * Adds a problem.
     *
     * @param problem what is wrong
     */
    public void add(Problem problem) {
        count++;
        long ofTheSame = counts.merge(new Source(problem.place().file(), problem.kind()), 1L, Long::sum);
        if (ofTheSame <= LISTED_PER_FILE_AND_KIND) {
            listed.add(problem);
        }
    }

    /**
     * Adds a problem.
     *
     * @param place where it stands
     * @param subject name of the thing concerned
     * @param finding what is wrong with it
     */
    public void add(Place place, String subject, Finding finding) {
        add(finding.at(place, subject));
    }

    /**
     * Adds something that is no mistake by itself, but may not be meant.
     *
     * @param place where it stands
     * @param text what it is, as a sentence without a full stop
     */
    public void notice(Place place, String text) {
        Notice notice = new Notice(place, Finding.printable(text));
        // A document with cases is put on cells once for each.
        if (notices.size() < LISTED_NOTICES && !notices.contains(notice)) {
            notices.add(notice);
        }
    }

    /** What may not be meant, the first hundred, by file, line and column. */
    public List<Notice> notices() {
        List<Notice> sorted = new ArrayList<>(notices);
        sorted.sort(Comparator.comparing(Notice::place));
        return List.copyOf(sorted);
    }

    /** How many problems there are, those not listed included. */
    public long count() {
        return count;
    }

    /** Whether there is no problem. */
    public boolean isEmpty() {
        return count == 0;
    }

    /**
     * The problems by file, line and column. Where some of a kind are not listed, a problem of the kind
     * {@link ProblemKind#MORE_OF_THE_SAME} at the end of their file says how many.
     */
    public List<Problem> sorted() {
        List<Problem> sorted = new ArrayList<>(listed);
        sorted.sort(null);
        counts.forEach((source, found) -> {
            if (found > LISTED_PER_FILE_AND_KIND) {
                insertAtEndOfFile(sorted, moreOf(source, found - LISTED_PER_FILE_AND_KIND));
            }
        });
        return List.copyOf(sorted);
    }

    private static Problem moreOf(Source source, long more) {
        String found = "and " + more + " more where something " + source.kind().summary();
        return Finding.of(ProblemKind.MORE_OF_THE_SAME, found, "none").at(Place.ofFile(source.file()), source.file());
    }

    private static void insertAtEndOfFile(List<Problem> sorted, Problem more) {
        int end = 0;
        for (int i = 0; i < sorted.size(); i++) {
            if (sorted.get(i).place().file().equals(more.place().file())) {
                end = i + 1;
            }
        }
        sorted.add(end, more);
    }

    /** The problems as text, one a line. */
    public String toText() {
        StringBuilder text = new StringBuilder();
        for (Problem problem : sorted()) {
            text.append(problem).append('\n');
        }
        return text.toString();
    }

    /**
     * Ends reading if there is any problem.
     *
     * @throws InputException with all problems, if there is any
     */
    public void throwIfAny() throws InputException {
        if (!isEmpty()) {
            throw new InputException(sorted());
        }
    }
}

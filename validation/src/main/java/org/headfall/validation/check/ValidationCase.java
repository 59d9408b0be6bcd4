package org.headfall.validation.check;

import java.util.List;

/**
 * One check against published work.
 *
 * @param name short name of small letters and hyphens, unique
 * @param title what is checked
 * @param part part of the report it belongs to
 * @param sources where the published numbers come from
 * @param proves what a pass shows
 * @param leavesOpen what a pass does not show
 * @param pace when it is run
 * @param procedure what is done
 */
public record ValidationCase(
        String name,
        String title,
        Part part,
        List<Source> sources,
        String proves,
        String leavesOpen,
        Pace pace,
        Procedure procedure) {

    /** Copies the sources. */
    public ValidationCase {
        sources = List.copyOf(sources);
    }

    /** When a case is run. */
    public enum Pace {
        /** A few seconds at most: part of every build. */
        FAST,
        /**
         * Longer, or known to fail today, where it would hide other failures of a build: run on demand, and in the
         * report all the same.
         */
        SLOW
    }

    /** What a case does. */
    @FunctionalInterface
    public interface Procedure {

        /**
         * Runs the case.
         *
         * @param findings receives comparisons, plots and remarks
         * @throws UnavailableException if something outside the project is missing
         */
        void run(Findings findings) throws UnavailableException;
    }

    /**
     * Runs the case. What goes wrong in it is part of the result.
     *
     * @return the result
     */
    public CaseResult run() {
        Findings findings = new Findings();
        long started = System.nanoTime();
        try {
            procedure.run(findings);
        } catch (UnavailableException missing) {
            return CaseResult.skipped(this, missing.reason());
        } catch (RuntimeException failure) {
            return CaseResult.broken(this, findings, failure, seconds(started));
        }
        return CaseResult.of(this, findings, seconds(started));
    }

    private static double seconds(long started) {
        return (System.nanoTime() - started) * 1e-9;
    }
}

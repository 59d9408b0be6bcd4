package org.headfall.scenarios.findings;

import java.util.List;

/**
 * Everything that was found in a run.
 *
 * @param artesianHead loss of artesian head of every station
 * @param interference one table a report date; empty if it was not computed
 * @param interferenceMethod how interference was computed, one sentence each
 * @param attribution what each bore did, one table a report date; empty if it was not computed
 * @param confinement where head fell below the aquifer top
 * @param recovery what is left of drawdown after taking stops
 */
public record Findings(
        List<ArtesianHead> artesianHead,
        List<InterferenceTable> interference,
        List<String> interferenceMethod,
        List<AttributionTable> attribution,
        Confinement confinement,
        Recoveries recovery) {

    /** Copies the lists. */
    public Findings {
        artesianHead = List.copyOf(artesianHead);
        interference = List.copyOf(interference);
        interferenceMethod = List.copyOf(interferenceMethod);
        attribution = List.copyOf(attribution);
    }

    /**
     * The same with what each bore did.
     *
     * @param found one table a report date
     * @return the findings
     */
    public Findings withAttribution(List<AttributionTable> found) {
        return new Findings(artesianHead, interference, interferenceMethod, found, confinement, recovery);
    }

    /**
     * The same with interference.
     *
     * @param tables one table a report date
     * @param method how it was computed, one sentence each
     * @return the findings
     */
    public Findings withInterference(List<InterferenceTable> tables, List<String> method) {
        return new Findings(artesianHead, tables, method, attribution, confinement, recovery);
    }
}

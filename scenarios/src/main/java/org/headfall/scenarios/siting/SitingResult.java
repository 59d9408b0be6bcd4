package org.headfall.scenarios.siting;

import java.util.List;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.scenario.SitingSpecification;

/**
 * Where new bores can go. Arrays have one value a cell, NaN where there is no aquifer; they are not copied and must not
 * change.
 *
 * @param run the run with the bores of the document
 * @param largestRate largest rate of a first new bore (m³/d)
 * @param ruling number of what decides it
 * @param reasons names of what decides, by number
 * @param lift lift at the wanted rate, or at the largest where that is less or none is wanted (m)
 * @param energy energy of that lift (kWh/ML)
 * @param ownError relative error of own drawdown that half of the tested cells stay below (-)
 * @param sites chosen sites, best first
 * @param asked what was asked for
 * @param missing why fewer were found, in words; empty if all were found
 * @param uncounted limits that were not counted, and why
 * @param cautions where a chosen site stands so that its figures cannot be trusted, one sentence each
 */
@SuppressWarnings("ArrayRecordComponent") // fields of 10⁵ cells, shared and never compared
public record SitingResult(
        RunDescription run,
        double[] largestRate,
        int[] ruling,
        List<String> reasons,
        double[] lift,
        double[] energy,
        double ownError,
        List<Site> sites,
        SitingSpecification asked,
        String missing,
        List<UncountedLimit> uncounted,
        List<String> cautions) {

    /** Copies the lists. */
    public SitingResult {
        reasons = List.copyOf(reasons);
        sites = List.copyOf(sites);
        uncounted = List.copyOf(uncounted);
        cautions = List.copyOf(cautions);
    }
}

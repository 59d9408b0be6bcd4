package org.headfall.scenarios.report.content;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.evidence.Evidence;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.solver.flow.WaterBalance;

/**
 * Everything a report says.
 *
 * @param heading what was asked
 * @param map the field from above at the report dates
 * @param sites bores, springs and watched points
 * @param hydrographs levels and flows over time
 * @param sections lines to cut the field along, the main one first
 * @param artesianHeads what each site loses
 * @param recoveries what becomes of drawdown when taking stops, empty if that was not computed
 * @param interference who lowers whose head, a table a date
 * @param attribution whom drawdown and lost discharge are put down to, at the report dates in order of time; empty if the run
 *     holds no such table
 * @param limits outcomes of the limits
 * @param accounts water years against entitlements, of holders or else of bores; empty if no accounts were kept
 * @param measured measured heads beside computed ones, empty if there are none
 * @param whatIf what heads at other rates follow from, absent if the run holds no responses
 * @param balance water that passed, a balance a period, in order of time
 * @param headError estimated numerical error of a head (m) or NaN if it was not estimated
 * @param headDoubts the parts of that error at each site and date, empty if they were not determined
 * @param headDoubtMethods how each part was found, one sentence or two each
 * @param evidence what a reviewer needs: assumptions, doubts, what is not answered, a checklist
 * @param provenance where it came from
 */
public record ReportContent(
        Heading heading,
        FieldMap map,
        List<Site> sites,
        List<Hydrograph> hydrographs,
        List<SectionLine> sections,
        List<ArtesianHead> artesianHeads,
        List<Recovery> recoveries,
        List<Interference> interference,
        List<AttributionSummary> attribution,
        List<LimitOutcome> limits,
        List<AccountSummary> accounts,
        List<MeasuredHead> measured,
        Optional<WhatIf> whatIf,
        List<WaterBalance> balance,
        double headError,
        List<HeadDoubt> headDoubts,
        List<String> headDoubtMethods,
        Evidence evidence,
        Provenance provenance) {

    /** Copies the lists and checks that every site has a state for each date of the map. */
    public ReportContent {
        sites = List.copyOf(sites);
        hydrographs = List.copyOf(hydrographs);
        sections = List.copyOf(sections);
        artesianHeads = List.copyOf(artesianHeads);
        recoveries = List.copyOf(recoveries);
        interference = List.copyOf(interference);
        attribution = List.copyOf(attribution);
        limits = List.copyOf(limits);
        accounts = List.copyOf(accounts);
        measured = List.copyOf(measured);
        balance = List.copyOf(balance);
        headDoubts = List.copyOf(headDoubts);
        headDoubtMethods = List.copyOf(headDoubtMethods);
        int dates = map.heads().size();
        for (Site site : sites) {
            if (site.states().size() != dates) {
                throw new IllegalArgumentException("site '" + site.name() + "' must have a state at each of the "
                        + dates + " dates, found " + site.states().size());
            }
        }
    }
}

package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.Optional;

/**
 * A whole scenario.
 *
 * @param title what the scenario is called
 * @param description what it is for; empty if not given
 * @param datum the level that all levels and heads are above, such as "national height datum"
 * @param coordinates the coordinate reference system of all positions
 * @param period the simulated period
 * @param grid how the area is divided into cells
 * @param aquifer the aquifer
 * @param ground level of the ground (m above datum)
 * @param sealingBed the bed above the aquifer, if it leaks
 * @param boundaries pieces of the rim through which water passes
 * @param recharges recharge by rain
 * @param springs springs, in the order of the document
 * @param bores bores, in the order of the document
 * @param protectedPoints other places whose heads are reported
 * @param measurements measured heads within the period
 * @param accounts how what is taken is accounted for, if it is
 * @param cases cases of taking that are all run; none if the document is run as it is
 * @param limits what must not happen
 * @param start heads at the start of the period
 * @param output what is written, and how exactly heads are computed
 * @param planning what is to be found out beside the run
 */
public record Scenario(
        String title,
        String description,
        String datum,
        CoordinateSystem coordinates,
        Period period,
        GridSpecification grid,
        AquiferSpecification aquifer,
        Field ground,
        Optional<SealingBedSpecification> sealingBed,
        List<BoundarySpecification> boundaries,
        List<RechargeSpecification> recharges,
        List<SpringSpecification> springs,
        List<BoreSpecification> bores,
        List<ProtectedPoint> protectedPoints,
        List<MeasurementSpecification> measurements,
        Optional<AccountsSpecification> accounts,
        List<CaseSpecification> cases,
        List<LimitSpecification> limits,
        StartSpecification start,
        OutputSpecification output,
        Planning planning) {
    /** Copies the lists. */
    public Scenario {
        boundaries = List.copyOf(boundaries);
        recharges = List.copyOf(recharges);
        springs = List.copyOf(springs);
        bores = List.copyOf(bores);
        protectedPoints = List.copyOf(protectedPoints);
        measurements = List.copyOf(measurements);
        cases = List.copyOf(cases);
        limits = List.copyOf(limits);
    }

    /** The scenario with the taking of one of its cases, and no other case. */
    public Scenario inCase(CaseSpecification one) {
        return new Scenario(
                title + ": " + one.name(),
                description,
                datum,
                coordinates,
                period,
                grid,
                aquifer,
                ground,
                sealingBed,
                boundaries,
                recharges,
                springs,
                bores.stream().map(one::applyTo).toList(),
                protectedPoints,
                measurements,
                accounts,
                List.of(one),
                limits,
                start,
                output,
                planning);
    }
}

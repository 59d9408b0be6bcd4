package org.headfall.scenarios.scenario;

import java.util.Optional;

/**
 * What is to be found out beside the run itself.
 *
 * @param siting where new bores can go
 * @param allocation how bores are to share the water
 * @param spacing how far apart bores should stand
 */
public record Planning(
        Optional<SitingSpecification> siting,
        Optional<AllocationSpecification> allocation,
        Optional<SpacingSpecification> spacing) {}

package org.headfall.scenarios.scenario;

import java.util.Optional;

/**
 * What is to be found out beside the run itself.
 *
 * @param siting where new bores can go
 */
public record Planning(Optional<SitingSpecification> siting) {}

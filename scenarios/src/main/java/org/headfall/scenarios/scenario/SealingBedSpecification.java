package org.headfall.scenarios.scenario;

/**
 * The bed above the aquifer.
 *
 * @param thickness thickness (m)
 * @param verticalConductivity vertical hydraulic conductivity (m/d)
 * @param specificStorage specific storage (1/m); zero leaves storage in the bed out
 * @param headAbove head on top of the bed (m above datum)
 */
public record SealingBedSpecification(
        Field thickness, Field verticalConductivity, Field specificStorage, Field headAbove) {}

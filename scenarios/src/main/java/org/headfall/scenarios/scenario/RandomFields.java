package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.stream.Stream;

/** The random fields of a scenario. */
public final class RandomFields {

    private RandomFields() {}

    /**
     * Every random field, in the order of the document.
     *
     * @param scenario the scenario
     */
    public static List<Field.Random> of(Scenario scenario) {
        AquiferSpecification aquifer = scenario.aquifer();
        Stream<Field> transmissivity = aquifer.transmissivity() instanceof AquiferSpecification.AlongAxes along
                ? Stream.of(along.x(), along.y())
                : Stream.of(((AquiferSpecification.WithRatio) aquifer.transmissivity()).mean());
        Stream<Field> bed = scenario.sealingBed().stream()
                .flatMap(given -> Stream.of(given.thickness(), given.verticalConductivity(), given.specificStorage()));
        return Stream.of(transmissivity, Stream.of(aquifer.storativity()), bed)
                .flatMap(fields -> fields)
                .filter(Field.Random.class::isInstance)
                .map(Field.Random.class::cast)
                .toList();
    }
}

package org.headfall.validation.command;

import java.util.List;
import java.util.stream.Stream;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.example.ExampleCases;
import org.headfall.validation.independent.IndependentCases;
import org.headfall.validation.property.PropertyCases;
import org.headfall.validation.simulator.SimulatorCases;
import org.headfall.validation.table.TableCases;

/** Every case there is. */
public final class AllCases {

    private AllCases() {}

    /** The cases in the order of the report. */
    public static List<ValidationCase> list() {
        return Stream.of(
                        TableCases.all(),
                        SimulatorCases.all(),
                        ExampleCases.all(),
                        PropertyCases.all(),
                        IndependentCases.all())
                .flatMap(List::stream)
                .toList();
    }
}

package org.headfall.validation.simulator;

import java.util.List;
import java.util.stream.Stream;
import org.headfall.validation.check.ValidationCase;

/** The cases of the simulator against closed forms. */
public final class SimulatorCases {

    private SimulatorCases() {}

    /** All of them. */
    public static List<ValidationCase> all() {
        return Stream.of(
                        OpenAquiferCases.all(),
                        LeakyCases.all(),
                        FreeFlowCases.all(),
                        SideCases.all(),
                        ZoneCases.all(),
                        SteadyFieldCases.all())
                .flatMap(List::stream)
                .toList();
    }
}

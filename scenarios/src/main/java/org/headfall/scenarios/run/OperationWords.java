package org.headfall.scenarios.run;

import java.util.stream.Collectors;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Season;

/** Says in words how a bore is operated. */
final class OperationWords {

    private OperationWords() {}

    /** Such as "flows freely; off from 2036-07-01". */
    static String of(BoreSpecification bore) {
        return bore.phases().stream()
                .map(phase -> words(phase.operation())
                        + phase.season().map(OperationWords::words).orElse("")
                        + phase.from().map(date -> " from " + date).orElse(""))
                .collect(Collectors.joining("; "));
    }

    /** Such as " from 1 October to 31 March each year". */
    private static String words(Season season) {
        return " from " + season.words() + " each year";
    }

    private static String words(BoreOperation operation) {
        if (operation instanceof BoreOperation.PumpedByCurve) {
            return "pumped by its pump curve";
        }
        if (operation instanceof BoreOperation.Pumped) {
            return "pumped";
        }
        return operation instanceof BoreOperation.FreeFlow ? "flows freely" : "off";
    }
}

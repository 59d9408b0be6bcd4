package org.headfall.scenarios.run;

import java.util.stream.Collectors;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;

/** Says in words how a bore is operated. */
final class OperationWords {

    private OperationWords() {}

    /** Such as "flows freely; off from 2036-07-01". */
    static String of(BoreSpecification bore) {
        return bore.phases().stream()
                .map(phase -> words(phase.operation())
                        + phase.from().map(date -> " from " + date).orElse(""))
                .collect(Collectors.joining("; "));
    }

    private static String words(BoreOperation operation) {
        if (operation instanceof BoreOperation.Pumped) {
            return "pumped";
        }
        return operation instanceof BoreOperation.FreeFlow ? "flows freely" : "off";
    }
}

package org.headfall.scenarios.reading;

import java.util.LinkedHashMap;
import java.util.Map;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification.Group;
import org.headfall.scenarios.scenario.LimitSpecification.OwnLevel;

/** The words by which documents and tables speak of bores. */
final class BoreWords {
    /** Keys and columns of the levels that limits may refer to. */
    static final Map<OwnLevel, String> LEVELS =
            Map.of(OwnLevel.PUMP_INTAKE, "pump_intake_level", OwnLevel.OUTLET, "outlet_level");

    static final Map<String, Group> GROUPS = groups();
    static final Map<String, BoreOperation> OPERATIONS = operations();

    private BoreWords() {}

    private static Map<String, Group> groups() {
        Map<String, Group> groups = new LinkedHashMap<>();
        groups.put("proposed", Group.PROPOSED);
        groups.put("existing", Group.EXISTING);
        return groups;
    }

    private static Map<String, BoreOperation> operations() {
        Map<String, BoreOperation> operations = new LinkedHashMap<>();
        operations.put("free flow", new BoreOperation.FreeFlow());
        operations.put("off", new BoreOperation.Off());
        operations.put("capped", new BoreOperation.Off());
        return operations;
    }
}

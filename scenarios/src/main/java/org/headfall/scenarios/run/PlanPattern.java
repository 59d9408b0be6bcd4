package org.headfall.scenarios.run;

import java.io.IOException;
import java.util.Optional;
import org.headfall.scenarios.assembly.Model;
import org.headfall.scenarios.assembly.ModelAssembly;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;

/**
 * A plan that others follow which differ from it in what bores do alone: the aquifer and all that lies on cells is
 * assembled once.
 */
public final class PlanPattern {

    private final Model model;
    private final RunPlan plan;

    private PlanPattern(Model model, RunPlan plan) {
        this.model = model;
        this.plan = plan;
    }

    /**
     * The pattern of a scenario.
     *
     * @param reading the document as it was read
     * @param toolVersion program and version, such as "Headfall 0.1.0"
     * @return its plan for one thread, and what is assembled
     * @throws InputException with all problems of the document and of what it means on the grid
     * @throws IOException if a file of the scenario cannot be read any more
     */
    public static PlanPattern of(ScenarioReading reading, String toolVersion) throws InputException, IOException {
        Model model = RunPlanner.assembled(reading, 1);
        return new PlanPattern(model, RunPlanner.plan(reading, model, toolVersion, 1));
    }

    /** Its own plan. */
    public RunPlan plan() {
        return plan;
    }

    /**
     * The plan of a scenario that differs in what bores do alone; whether it does is for the caller to know. What is said
     * of files and of assumptions is that of the pattern.
     *
     * @param reading the document as it was read
     * @return the plan
     * @throws InputException with all problems of the document and of what it means on the grid
     */
    public RunPlan plan(ScenarioReading reading) throws InputException {
        Optional<Model> changed = ModelAssembly.assembleLike(model, reading.orThrow(), reading.problems());
        reading.problems().throwIfAny();
        return RunPlanner.planLike(plan, reading, changed.orElseThrow());
    }
}

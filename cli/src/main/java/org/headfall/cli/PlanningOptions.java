package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.limits.HeadProportion;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a command that plans bores is told: the scenario, where its files go and how it answers. */
final class PlanningOptions {

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description = "Folder for what is found; otherwise one in results beside the document, named after it and"
                    + " after what is found.")
    private @Nullable Path output;

    @Option(names = "--overwrite", description = "Replace what is there, once the new files are complete.")
    private boolean overwrite;

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    ScenarioReading read() throws InputException {
        return argument.read();
    }

    RunPlan plan(ScenarioReading reading) throws InputException, IOException {
        return RunPlanner.plan(reading, ProgramVersion.text(), threads.threads());
    }

    /** The plans of all cases of the document if any of its limits compares with one. */
    List<CasePlan> comparedCases(ScenarioReading reading, RunPlan plan) throws InputException, IOException {
        return plan.limits().stream().anyMatch(HeadProportion::isBesideCase)
                ? RunPlanner.cases(reading, ProgramVersion.text(), threads.threads())
                : List.of();
    }

    /** Says what was read that is no mistake but may not be meant. */
    static void remark(ScenarioReading reading, PrintWriter err) {
        reading.problems().notices().forEach(notice -> err.println("headfall: note: " + notice));
    }

    /** Unit responses of the last run of the scenario, if they hold for a plan. */
    PlanningResponses responses(RunPlan plan) {
        return PlanningResponses.of(plan, argument.resultsFolder());
    }

    /**
     * Where files go: what was asked for, or the folder of results with something added to its name. Asked for before
     * anything is read, for a place that is taken is refused here.
     */
    Path target(String ending, WrittenFiles files) throws ResultsException {
        Path target = output == null ? argument.resultsFolder(ending) : output;
        ResultsFolder.requireFree(target, overwrite, files);
        return target;
    }

    ResultsFolder open(Path target, WrittenFiles files) throws ResultsException {
        return ResultsFolder.open(target, overwrite, files);
    }

    boolean wantsJson() {
        return json.wanted();
    }
}

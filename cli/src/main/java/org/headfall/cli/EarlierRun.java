package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.run.EarlierResponses;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A scenario that is answered from the unit responses of a run on the same aquifer and grid, and where answers go. */
final class EarlierRun {

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Option(
            names = "--responses",
            paramLabel = "DIR",
            description = "Results of the run; otherwise results/NAME beside the scenario document NAME.yaml.")
    private @Nullable Path responses;

    @Option(
            names = "--output",
            paramLabel = "DIR",
            description = "Folder for the tables; otherwise one beside those results, named after this command.")
    private @Nullable Path output;

    @Option(names = "--overwrite", description = "Replace an older study, once the new one is complete.")
    private boolean overwrite;

    /** The plan of the scenario, for a command that solves nothing. */
    RunPlan plan() throws InputException, IOException {
        return plan(1);
    }

    /** The plan of the scenario, with as many threads. */
    RunPlan plan(int threads) throws InputException, IOException {
        return RunPlanner.plan(argument.read(), ProgramVersion.text(), threads);
    }

    /** The answers for a plan; what cannot be answered exactly enough is refused, and of changed tables is warned. */
    RunFromResponses answers(RunPlan plan, PrintWriter err) throws ResultsException {
        Path folder = responses();
        EarlierResponses stored = new EarlierResponses(folder);
        RunFromResponses answers = new RunFromResponses(plan, stored);
        ChangedFiles.warn(stored.changes(), err);
        if (answers.inexact().isPresent()) {
            throw new ResultsException(
                    ResultsException.Kind.OF_ANOTHER_AQUIFER,
                    folder,
                    "unit responses cannot answer this run exactly enough: "
                            + answers.inexact().get());
        }
        return answers;
    }

    /** Where the results of the run are. */
    Path responses() {
        return responses == null ? argument.resultsFolder() : responses;
    }

    /** Where the tables of a command go; asked for before anything is read, for a place that is taken is refused here. */
    Path target(String command, WrittenFiles files) throws ResultsException {
        Path target = output == null ? argument.resultsFolder("-" + command) : output;
        ResultsFolder.requireFree(target, overwrite, files);
        return target;
    }

    boolean overwrites() {
        return overwrite;
    }
}

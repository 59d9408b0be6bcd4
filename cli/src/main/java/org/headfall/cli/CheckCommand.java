package org.headfall.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.scenario.Scenario;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Reads a scenario document with its tables and says everything that is wrong with them. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Reads a scenario and its tables, reports every problem at once, runs nothing.",
        footerHeading = "%nExample:%n",
        footer = "  headfall check my-field/scenario.yaml")
final class CheckCommand implements Callable<Integer> {

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
        Scenario scenario = argument.read().orThrow();
        PrintWriter out = spec.commandLine().getOut();
        out.println(argument.document() + ": no problem found.");
        out.println(scenario.title() + ", " + scenario.period().from() + " to "
                + scenario.period().until());
        out.println("bores: " + scenario.bores().size() + ", springs: "
                + scenario.springs().size() + ", protected points: "
                + scenario.protectedPoints().size() + ", limits: "
                + scenario.limits().size());
        return ExitCode.DONE.code();
    }
}

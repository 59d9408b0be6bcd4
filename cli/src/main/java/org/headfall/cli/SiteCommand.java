package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.scenarios.siting.Site;
import org.headfall.scenarios.siting.SiteCheck;
import org.headfall.scenarios.siting.SiteSearch;
import org.headfall.scenarios.siting.SitingBase;
import org.headfall.scenarios.siting.SitingFiles;
import org.headfall.scenarios.siting.SitingResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says where new bores can go, and how much each may take. */
@Command(
        name = "site",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Finds the largest rate of a new bore in every cell, and the best sites, with limits kept;"
                + " those that it does not count are listed.",
        footerHeading = "%nExample:%n",
        footer = "  headfall site my-field")
final class SiteCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Mixin
    private final PlanningOptions options = new PlanningOptions();

    @Option(names = "--without-check", description = "Do not run the chosen sites through the simulator.")
    private boolean withoutCheck;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param terminal what is at the other end of the streams
     */
    SiteCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = options.target("-sites", SitingFiles.NAMES);
        ScenarioReading reading = options.read();
        RunPlan plan = options.plan(reading);
        PlanningOptions.remark(reading, spec.commandLine().getErr());
        SitingSpecification siting = PlanningSection.require(
                reading, "siting", reading.orThrow().planning().siting());
        PrintWriter err = spec.commandLine().getErr();
        try (ResultsFolder folder = options.open(target, SitingFiles.NAMES);
                Progress progress = terminal.progress(err)) {
            PlanningResponses responses = options.responses(plan);
            SitingBase base =
                    SitingBase.of(plan, responses.orComputed(plan, progress::reached), siting, progress::reached);
            long started = System.nanoTime();
            SitingResult result = SiteSearch.in(base, siting, progress::reached);
            double seconds = (System.nanoTime() - started) * 1e-9;
            progress.reached("simulating the chosen sites", 0);
            Optional<SiteCheck> check = withoutCheck || result.sites().isEmpty()
                    ? Optional.empty()
                    : Optional.of(SiteCheck.of(base.run(), siting, result));
            SitingFiles.write(folder.file(""), result, check);
            folder.complete();
            show(new Answer(
                    target.toString(),
                    result.asked().sites(),
                    result.missing(),
                    result.sites(),
                    check.map(SiteCheck::lines).orElse(List.of()),
                    result.ownError(),
                    result.uncounted(),
                    result.cautions(),
                    responses.words(),
                    seconds));
        }
        return ExitCode.DONE.code();
    }

    private record Answer(
            String folder,
            int wanted,
            String missing,
            List<Site> sites,
            List<SiteCheck.Line> check,
            double ownDrawdownError,
            List<UncountedLimit> limitsNotCounted,
            List<String> cautions,
            String unitResponses,
            double seconds) {}

    private void show(Answer answer) {
        PrintWriter out = spec.commandLine().getOut();
        if (options.wantsJson()) {
            out.println(AnswerJson.of(answer));
            return;
        }
        TextBlock text = new TextBlock(out);
        text.sentence(
                answer.sites().size() == answer.wanted()
                        ? "Sites found: " + answer.wanted()
                        : "Sites found: " + answer.sites().size() + " of " + answer.wanted() + "; " + answer.missing());
        answer.sites().forEach(site -> text.item(words(site)));
        for (SiteCheck.Line line : answer.check()) {
            text.item(String.format(
                    Locale.ROOT,
                    "%s: effect of all sites %.3f %s, by the simulator %.3f",
                    line.limit(),
                    line.predicted(),
                    line.unit(),
                    line.simulated()));
        }
        PlanningRemarks.uncounted(text, answer.limitsNotCounted());
        answer.cautions().forEach(caution -> text.sentence("Caution: " + caution));
        text.sentence("Unit responses: " + answer.unitResponses());
        text.sentence("Computed, not approved: distances, rights and the ground itself are for those who know them.");
        out.println("Written: " + TextBlock.printable(answer.folder()));
    }

    private static String words(Site site) {
        return String.format(
                Locale.ROOT,
                "%d  easting %.0f m, northing %.0f m: %.1f L/s, lift %.1f m, %.0f kWh/ML; at most %.1f L/s there,"
                        + " decided by %s",
                site.number(),
                site.x(),
                site.y(),
                DischargeUnit.LITRES_PER_SECOND.of(site.rate()),
                site.lift(),
                site.energy(),
                DischargeUnit.LITRES_PER_SECOND.of(site.largestRate()),
                site.ruling());
    }
}

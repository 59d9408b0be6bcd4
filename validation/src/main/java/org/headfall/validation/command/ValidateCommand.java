package org.headfall.validation.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.headfall.cli.ExitCode;
import org.headfall.cli.JsonOption;
import org.headfall.cli.ProgramVersion;
import org.headfall.validation.check.CaseResult;
import org.headfall.validation.check.CaseResult.Verdict;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.report.ValidationReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;

/** Runs the checks against published work and writes their report. */
@Command(
        name = "validate",
        mixinStandardHelpOptions = true,
        description = "Checks the program against published work and writes validation.html and validation.csv.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every case that could be run holds", "70:a case is failing"},
        footerHeading = "%nExamples:%n",
        footer = {
            "  headfall validate",
            "  headfall validate --fast --output checks",
            "  headfall validate --only theis,hantush-jacob"
        })
final class ValidateCommand implements Callable<Integer> {

    @Option(
            names = "--output",
            paramLabel = "DIR",
            defaultValue = "validation",
            description = "Folder for the report, made if missing; otherwise ${DEFAULT-VALUE}.")
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private Path output;

    @Option(
            names = "--only",
            paramLabel = "NAME",
            split = ",",
            description = "Run only these cases, or those whose names begin so; names stand in the report.")
    private List<String> only = List.of();

    @Option(names = "--fast", description = "Run only the cases that are part of every build.")
    private boolean fast;

    @Mixin
    private final JsonOption json = new JsonOption();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        List<ValidationCase> chosen = chosen();
        List<CaseResult> results = new ArrayList<>();
        PrintWriter err = spec.commandLine().getErr();
        for (ValidationCase validationCase : chosen) {
            CaseResult result = validationCase.run();
            results.add(result);
            err.println(String.format(
                    Locale.ROOT,
                    "%3d of %d  %-7s  %s (%.1f s)",
                    results.size(),
                    chosen.size(),
                    result.verdict().words(),
                    validationCase.name(),
                    result.seconds()));
        }
        ValidationReport.write(results, ProgramVersion.text(), output);
        answer(results);
        return (count(results, Verdict.FAILED) > 0 ? ExitCode.FAULT : ExitCode.DONE).code();
    }

    private List<ValidationCase> chosen() {
        List<ValidationCase> all = AllCases.list();
        for (String name : only) {
            if (all.stream().noneMatch(item -> item.name().startsWith(name))) {
                throw new ParameterException(
                        spec.commandLine(),
                        "--only: no case's name begins with '" + name + "'; there are "
                                + String.join(
                                        ", ",
                                        all.stream().map(ValidationCase::name).toList()));
            }
        }
        return all.stream()
                .filter(item -> only.isEmpty()
                        || only.stream().anyMatch(name -> item.name().startsWith(name)))
                .filter(item -> !fast || item.pace() == ValidationCase.Pace.FAST)
                .toList();
    }

    private static long count(List<CaseResult> results, Verdict verdict) {
        return results.stream().filter(result -> result.verdict() == verdict).count();
    }

    private void answer(List<CaseResult> results) {
        PrintWriter out = spec.commandLine().getOut();
        if (json.wanted()) {
            out.println(JsonMapper.builder().build().writeValueAsString(summary(results)));
            return;
        }
        results.stream()
                .filter(result -> result.verdict() == Verdict.FAILED)
                .forEach(result ->
                        out.println("failing: " + result.validationCase().name() + ": "
                                + result.validationCase().title()));
        out.println(count(results, Verdict.PASSED) + " cases passed, " + count(results, Verdict.FAILED) + " failing, "
                + count(results, Verdict.SKIPPED) + " skipped.");
        out.println(
                "Written: " + output.resolve(ValidationReport.PAGE) + " and " + output.resolve(ValidationReport.TABLE));
    }

    private Map<String, Object> summary(List<CaseResult> results) {
        Map<String, Object> summary = new LinkedHashMap<>();
        for (Verdict verdict : Verdict.values()) {
            summary.put(
                    verdict.words(),
                    results.stream()
                            .filter(result -> result.verdict() == verdict)
                            .map(result -> result.validationCase().name())
                            .toList());
        }
        summary.put("page", output.resolve(ValidationReport.PAGE).toString());
        summary.put("table", output.resolve(ValidationReport.TABLE).toString());
        return summary;
    }
}

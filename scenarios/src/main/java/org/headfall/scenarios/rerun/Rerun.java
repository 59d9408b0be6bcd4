package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.InputFile;
import org.headfall.scenarios.results.CaseFolders;
import org.headfall.scenarios.results.FileChanges;
import org.headfall.scenarios.results.KeptInputs;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunOrigin;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.scenarios.run.CasePlan;
import org.headfall.scenarios.run.CaseRuns;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.run.ScenarioRun;
import org.headfall.scenarios.run.StandardOutputs;

/** Runs a result again from the inputs that it keeps, and compares every file that comes of it. */
public final class Rerun {

    private final Path results;
    private final List<Path> folders;
    private final RunOrigin origin;

    /**
     * A rerun.
     *
     * @param results folder of the results of a run, of a run with cases, or of one of its cases
     * @throws ResultsException if it holds no finished results, or a summary is damaged
     */
    public Rerun(Path results) throws ResultsException {
        this.results = results;
        List<Path> cases = CaseFolders.in(results);
        folders = cases.isEmpty() ? List.of(results) : cases;
        origin = RunOrigin.of(folders.get(0));
        if (origin.answeredFrom().isPresent()) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    results,
                    "was answered by headfall estimate from "
                            + origin.answeredFrom().get().folder()
                            + " and keeps no inputs; prove that folder, or run the scenario in full (headfall run)");
        }
    }

    /** Program and version that made the results. */
    public String madeBy() {
        return origin.toolVersion();
    }

    /** Whether the results are those of several cases, each in a folder of its own. */
    private boolean ofCases() {
        return !folders.equals(List.of(results));
    }

    /**
     * What was done to the files since the run, folder by folder.
     *
     * @return the changes in each folder of a run; of a run with cases also in the folder around them
     * @throws ResultsException if a summary is damaged or of another format
     */
    public List<FileChanges> changes() throws ResultsException {
        List<FileChanges> changes = new ArrayList<>();
        if (ofCases()) {
            changes.add(FileChanges.aroundCases(results));
        }
        for (Path folder : folders) {
            changes.add(FileChanges.in(folder));
        }
        return changes;
    }

    /**
     * Runs again.
     *
     * @param toolVersion program and version
     * @param threads threads of the linear solver
     * @param progress is told how far the run has come
     * @return what came of it, one proof a folder; of a run with cases also of the folder around them
     * @throws InputException if the kept document cannot be read any more
     * @throws IOException if the kept inputs are not those of the results, or a file cannot be read or written
     */
    public List<FolderProof> run(String toolVersion, int threads, RunProgress progress)
            throws InputException, IOException {
        Path inputs = Files.createTempDirectory("headfall-rerun");
        try {
            ScenarioReading reading = kept(inputs);
            Path again = inputs.resolve("headfall-rerun-results");
            List<CasePlan> cases = RunPlanner.cases(reading, toolVersion, threads);
            if (cases.isEmpty()) {
                RunPlan plan = RunPlanner.plan(reading, toolVersion, threads);
                new ScenarioRun(
                                withDoubts(plan),
                                StandardOutputs.besidesReport(reading.folder().usedFiles()),
                                progress)
                        .into(again, false);
                return List.of(proof(results, again, toolVersion));
            }
            List<CasePlan> needed = (ofCases() ? cases : neededFor(cases))
                    .stream()
                            .map(one -> new CasePlan(one.name(), withDoubts(one.plan())))
                            .toList();
            new CaseRuns(needed, StandardOutputs.besidesReport(reading.folder().usedFiles()), progress)
                    .into(again, false);
            return proofs(needed, again, toolVersion);
        } finally {
            ResultsFolder.delete(inputs);
        }
    }

    private ScenarioReading kept(Path into) throws InputException, IOException {
        KeptInputs.unpack(folders.get(0), into);
        Path document = into.resolve(origin.inputs().get(0).path());
        if (!Files.isRegularFile(document)) {
            throw ResultsException.damaged(
                    folders.get(0).resolve(KeptInputs.NAME),
                    "does not hold the document " + origin.inputs().get(0).path(),
                    null);
        }
        ScenarioReading reading = ScenarioReader.read(document, FileReach.ANYWHERE);
        reading.orThrow();
        Map<String, String> found = reading.folder().usedFiles().stream()
                .collect(Collectors.toMap(file -> file.name(), file -> file.sha256()));
        for (InputFile file : origin.inputs()) {
            if (!file.sha256().equals(found.get(file.path()))) {
                throw ResultsException.damaged(
                        results,
                        "cannot be run again, " + file.path() + " is not the file that the results were made of",
                        null);
            }
        }
        return reading;
    }

    private RunPlan withDoubts(RunPlan plan) {
        return origin.doubts() ? plan.withDoubts() : plan;
    }

    /** The case whose folder was named. */
    private CasePlan named(List<CasePlan> cases) throws ResultsException {
        return cases.stream()
                .filter(one -> one.plan().description().title().equals(origin.title()))
                .findFirst()
                .orElseThrow(() -> ResultsException.damaged(
                        results, "is the result of no case of its document, '" + origin.title() + "'", null));
    }

    /** The case whose folder was named, and those that its limits compare it with. */
    private List<CasePlan> neededFor(List<CasePlan> cases) throws ResultsException {
        CasePlan wanted = named(cases);
        Set<String> names = new LinkedHashSet<>(Set.of(wanted.name()));
        wanted.plan().limits().forEach(limit -> {
            if (limit.comparison() instanceof Comparison.WithCase other) {
                names.add(other.name());
            }
        });
        return cases.stream().filter(one -> names.contains(one.name())).toList();
    }

    private List<FolderProof> proofs(List<CasePlan> cases, Path again, String toolVersion) throws IOException {
        if (!ofCases()) {
            CasePlan wanted = named(cases);
            return List.of(proof(results, again.resolve(wanted.folder()), toolVersion));
        }
        List<FolderProof> proofs = new ArrayList<>();
        proofs.add(new FolderProof(results, new FolderComparison(results, Set.of(), again, text -> text).files(), ""));
        for (CasePlan one : cases) {
            Path folder = results.resolve(one.folder());
            proofs.add(
                    Files.isDirectory(folder)
                            ? proof(folder, again.resolve(one.folder()), toolVersion)
                            : new FolderProof(
                                    folder,
                                    List.of(FileComparison.notCompared(one.folder(), "this folder is missing")),
                                    ""));
        }
        Set<Path> ofCases =
                cases.stream().map(one -> results.resolve(one.folder())).collect(Collectors.toSet());
        for (Path folder : folders) {
            if (!ofCases.contains(folder)) {
                proofs.add(new FolderProof(
                        folder,
                        List.of(FileComparison.notCompared(
                                String.valueOf(folder.getFileName()), "the document has no such case")),
                        ""));
            }
        }
        return proofs;
    }

    private static FolderProof proof(Path before, Path again, String toolVersion) throws IOException {
        RunOrigin made = RunOrigin.of(before);
        return new FolderProof(
                before,
                new FolderComparison(before, made.files(), again, text -> text.replace(made.toolVersion(), toolVersion))
                        .files(),
                otherWay(made.solvedBy(), RunOrigin.of(again).solvedBy()));
    }

    private static String otherWay(Optional<SolvedBy> before, Optional<SolvedBy> now) {
        return before.map(SolvedBy::superposition).equals(now.map(SolvedBy::superposition))
                ? ""
                : "Heads were found " + before.map(SolvedBy::words).orElse("in a way that is not kept") + "; now "
                        + now.map(SolvedBy::words).orElse("in another")
                        + ". The two agree within the head tolerance, not to the last digit.";
    }
}

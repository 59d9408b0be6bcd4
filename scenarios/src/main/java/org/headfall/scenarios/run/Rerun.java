package org.headfall.scenarios.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.InputFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.KeptInputs;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.ResultsReader;

/** Runs a result again from the inputs that it keeps, and says whether the same numbers come of it. */
public final class Rerun {

    private final Path results;
    private final FinishedRun before;

    /**
     * A rerun.
     *
     * @param results folder of the results
     * @throws ResultsException if it holds no finished results
     */
    public Rerun(Path results) throws ResultsException {
        this.results = results;
        before = new ResultsReader().read(results);
    }

    /** What came of it. */
    public sealed interface Outcome {}

    /**
     * Every number is the same to the last bit.
     *
     * @param numbers how many numbers were compared
     */
    public record Identical(long numbers) implements Outcome {}

    /**
     * A number is not the same: the first one in order of time.
     *
     * @param what which number, in words
     * @param before the number in the results
     * @param now the number of the new run
     */
    public record Differs(String what, double before, double now) implements Outcome {}

    /** Program and version that made the results. */
    public String madeBy() {
        return before.description().provenance().toolVersion();
    }

    /**
     * Runs again.
     *
     * @param toolVersion program and version
     * @param threads threads of the linear solver
     * @param progress is told how far the run has come
     * @return the outcome
     * @throws InputException if the kept document cannot be read any more
     * @throws IOException if the kept inputs are not those of the results, or a file cannot be read or written
     */
    public Outcome run(String toolVersion, int threads, RunProgress progress) throws InputException, IOException {
        Path folder = Files.createTempDirectory("headfall-rerun");
        try {
            KeptInputs.unpack(results, folder);
            List<InputFile> inputs = before.description().provenance().inputs();
            Path document = folder.resolve(inputs.get(0).path());
            if (!Files.isRegularFile(document)) {
                throw new ResultsException(
                        ResultsException.Kind.DAMAGED,
                        results.resolve(KeptInputs.NAME),
                        "does not hold the document " + inputs.get(0).path());
            }
            RunPlan plan = plan(ScenarioReader.read(document, FileReach.ANYWHERE), toolVersion, threads);
            requireSame(inputs, plan.description().provenance().inputs());
            boolean doubts = before.figures().errorBudget().isPresent();
            FinishedRun now = new ScenarioRun(doubts ? plan.withDoubts() : plan, List.of(), progress)
                    .into(folder.resolve("headfall-rerun-results"), false);
            return new NumbersOfRuns(before, now).compare();
        } finally {
            ResultsFolder.delete(folder);
        }
    }

    /** The plan of the document, or of the case of it that the results are of. */
    private RunPlan plan(ScenarioReading reading, String toolVersion, int threads) throws InputException, IOException {
        String title = before.description().title();
        Optional<CasePlan> one = RunPlanner.cases(reading, toolVersion, threads).stream()
                .filter(plan -> plan.plan().description().title().equals(title))
                .findFirst();
        return one.isPresent() ? one.get().plan() : RunPlanner.plan(reading, toolVersion, threads);
    }

    private void requireSame(List<InputFile> kept, List<InputFile> found) throws ResultsException {
        Map<String, String> hashes = found.stream().collect(Collectors.toMap(InputFile::path, InputFile::sha256));
        for (InputFile file : kept) {
            if (!file.sha256().equals(hashes.get(file.path()))) {
                throw new ResultsException(
                        ResultsException.Kind.DAMAGED,
                        results,
                        "cannot be run again: " + file.path() + " is not the file that the results were made of");
            }
        }
    }
}

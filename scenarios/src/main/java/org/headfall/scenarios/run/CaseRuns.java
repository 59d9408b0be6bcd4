package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.headfall.scenarios.results.CaseTable;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.scenarios.results.WrittenFiles;

/**
 * Runs all cases of a document, each into a folder of its own within that of the results, and writes one table of their
 * limits. All are simulated before the limits of any are judged, for limits may compare one case with another. Unit
 * responses are the same in all of them and are computed once.
 */
public final class CaseRuns {

    private final List<CasePlan> cases;
    private final List<RunOutput> outputs;
    private final RunProgress progress;

    /**
     * Runs of cases.
     *
     * @param cases the cases, at least one
     * @param outputs files to make of each finished run
     * @param progress is told how far the runs have come
     */
    public CaseRuns(List<CasePlan> cases, List<RunOutput> outputs, RunProgress progress) {
        this.cases = List.copyOf(cases);
        this.outputs = List.copyOf(outputs);
        this.progress = progress;
    }

    /**
     * Runs and writes.
     *
     * @param target final folder of the results
     * @param overwrite whether results that stand there may be replaced, once the new ones are complete
     * @return the finished runs by the names of their cases, in order
     * @throws ResultsException if results exist and may not be replaced, or a file cannot be written
     */
    public Map<String, FinishedRun> into(Path target, boolean overwrite) throws ResultsException {
        Deque<ResultsFolder> open = new ArrayDeque<>();
        try (ResultsFolder folder = ResultsFolder.open(target, overwrite, WrittenFiles.OF_CASES)) {
            Map<String, FinishedRun> finished = run(folder, open);
            CaseTable.write(folder.file(""), finished);
            folder.complete();
            return finished;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        } catch (UncheckedIOException e) {
            throw ResultsFolder.explained(Objects.requireNonNull(e.getCause()), target);
        } finally {
            release(open);
        }
    }

    private Map<String, FinishedRun> run(ResultsFolder folder, Deque<ResultsFolder> open) throws IOException {
        Map<String, ScenarioRun> runs = new LinkedHashMap<>();
        Map<String, ResultsFolder> folders = new HashMap<>();
        Map<String, Simulated> simulated = new LinkedHashMap<>();
        try (RunResponses responses = new RunResponses(folder.file(""))) {
            for (CasePlan one : cases) {
                ScenarioRun run = new ScenarioRun(
                        one.plan(),
                        outputs,
                        (stage, fraction) -> progress.reached(one.name() + ": " + stage, fraction));
                ResultsFolder inner = run.open(folder.file(one.folder()), true);
                open.push(inner);
                Simulated done = run.simulate(inner, responses);
                runs.put(one.name(), run);
                folders.put(one.name(), inner);
                simulated.put(one.name(), done);
            }
        }
        Map<String, FinishedRun> finished = new LinkedHashMap<>();
        for (Map.Entry<String, ScenarioRun> run : runs.entrySet()) {
            String name = run.getKey();
            ResultsFolder inner = Objects.requireNonNull(folders.get(name));
            Simulated done = Objects.requireNonNull(simulated.get(name));
            // beside itself a case shows no effect, which is what its limits should say
            finished.put(name, run.getValue().finish(inner, done, simulated));
            inner.complete();
        }
        return finished;
    }

    /** Lets go of the folders of all cases; those that are complete have been let go of already. */
    private static void release(Deque<ResultsFolder> open) throws ResultsException {
        for (ResultsFolder folder : open) {
            try {
                folder.close();
            } catch (IOException e) {
                throw ResultsFolder.explained(e, folder.target());
            }
        }
    }
}

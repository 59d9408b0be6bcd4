package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.headfall.scenarios.recording.InputFile;

/**
 * What results were made of and how, so that they can be made again: read from {@code summary.json} alone, so that it is
 * known even if other files were changed.
 *
 * @param title title of the run
 * @param toolVersion program and version that made it
 * @param files names of the files that it wrote besides the summary
 * @param inputs the scenario document first, then every file that it names
 * @param doubts whether the run was repeated to find its errors
 * @param solvedBy how heads were found
 * @param answeredFrom unit responses that it was answered from, if it was not simulated
 */
public record RunOrigin(
        String title,
        String toolVersion,
        Set<String> files,
        List<InputFile> inputs,
        boolean doubts,
        Optional<SolvedBy> solvedBy,
        Optional<AnsweredFrom> answeredFrom) {

    /** Copies set and list. */
    public RunOrigin {
        files = Set.copyOf(files);
        inputs = List.copyOf(inputs);
    }

    /**
     * Reads it.
     *
     * @param folder folder of finished results
     * @return the origin
     * @throws ResultsException if the folder holds no finished results, or its summary is damaged or of another format
     */
    public static RunOrigin of(Path folder) throws ResultsException {
        try {
            SummaryHead.read(folder);
            Summary summary = new SummaryFile().read(folder);
            return new RunOrigin(
                    summary.title(),
                    summary.toolVersion(),
                    summary.files().keySet(),
                    summary.inputs(),
                    summary.figures().errorBudget().isPresent(),
                    summary.figures().solvedBy(),
                    summary.figures().answeredFrom());
        } catch (ResultsException e) {
            throw e;
        } catch (IOException e) {
            throw new ResultsException(ResultsException.Kind.NOT_FINISHED, folder, "cannot be read: " + e, e);
        }
    }
}

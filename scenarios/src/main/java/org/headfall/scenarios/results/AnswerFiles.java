package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;

/**
 * Files of a run that was answered at its stations, each written as soon as what is in it is known. Different threads may
 * write different files; the summary comes last.
 */
public final class AnswerFiles {

    private final Path folder;
    private final RunDescription description;

    /** What the large files are known again by, found by the threads that wrote them. */
    private final Map<String, FileStamp> stamps = new ConcurrentHashMap<>();

    /**
     * Files in a folder.
     *
     * @param folder folder of the results
     * @param description the run
     */
    public AnswerFiles(Path folder, RunDescription description) {
        this.folder = folder;
        this.description = description;
    }

    /**
     * Writes the series of all stations.
     *
     * @param recording what was found at the stations
     * @throws IOException if the file cannot be written
     */
    public void writeSeries(Recording recording) throws IOException {
        SeriesCsv.write(folder.resolve(SeriesCsv.NAME), description, recording);
        stamp(SeriesCsv.NAME);
    }

    /**
     * Writes what is put down to single bores.
     *
     * @param attribution a table a report date
     * @throws IOException if the file cannot be written
     */
    public void writeAttribution(List<AttributionTable> attribution) throws IOException {
        AttributionCsv.write(folder.resolve(AttributionCsv.NAME), attribution, description);
        stamp(AttributionCsv.NAME);
    }

    /**
     * Writes the tables of all other findings and of the limits.
     *
     * @param run the run; what is put down to single bores may be missing
     * @throws IOException if a file cannot be written
     */
    public void writeFindings(FinishedRun run) throws IOException {
        Tables.writeFindings(folder, run);
    }

    /**
     * Writes the summary, after all other files.
     *
     * @param run the whole run
     * @throws IOException if the file cannot be written
     */
    public void writeSummary(FinishedRun run) throws IOException {
        new SummaryFile().write(folder, run, stamps);
    }

    private void stamp(String name) throws IOException {
        stamps.put(name, FileStamp.of(folder.resolve(name)));
    }
}

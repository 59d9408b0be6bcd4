package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Provenance;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.reference.CoordinateReference;

/**
 * Reads a finished folder back. Fields of the grid come back in single precision, series and levels of stations
 * exactly.
 */
public final class ResultsReader {

    /** Files that a run is read from. */
    private static final List<String> READ = List.of(SummaryFile.NAME, "heads.nc", "bores.nc");

    /**
     * Reads a run.
     *
     * @param folder folder of the results
     * @return the run
     * @throws ResultsException if the folder holds no finished results, or a file that is read is damaged or changed
     */
    public FinishedRun read(Path folder) throws ResultsException {
        if (!Files.isDirectory(folder)) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    folder,
                    "is no folder of results; name one that headfall run has written");
        }
        CaseFolders.requireNone(folder, "");
        try {
            requireMaps(folder);
            for (String name : READ) {
                if (!Files.isRegularFile(folder.resolve(name))) {
                    throw new ResultsException(
                            ResultsException.Kind.NOT_FINISHED,
                            folder,
                            "holds no finished results: " + name
                                    + " is missing; copy the folder anew or run the scenario"
                                    + " again (headfall run)");
                }
            }
            return readFiles(folder);
        } catch (ResultsException e) {
            throw e;
        } catch (IOException | IllegalArgumentException e) {
            throw ResultsException.damaged(folder, "cannot be read, " + e.getMessage(), e);
        }
    }

    /** A run that was answered from unit responses is whole, but has nothing of the grid. */
    private static void requireMaps(Path folder) throws IOException {
        if (Files.isRegularFile(folder.resolve(SummaryFile.NAME))
                && !SummaryHead.read(folder).files().containsKey("heads.nc")
                && !Files.exists(folder.resolve("heads.nc"))) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    folder,
                    "heads.nc is missing: results that were answered from unit responses hold tables only; run the"
                            + " scenario in full for maps and a report");
        }
    }

    /**
     * Numerical errors that a run states, without reading its maps.
     *
     * @param folder folder of the results
     * @return the errors of heads and limits
     * @throws ResultsException if the folder holds no finished results or its summary is damaged
     */
    public static StatedErrors errors(Path folder) throws ResultsException {
        try {
            FileChanges.requireUnchanged(folder, List.of(SummaryFile.NAME));
            Summary summary = new SummaryFile().read(folder);
            return new StatedErrors(
                    summary.figures().stationHeadError(),
                    summary.limits(),
                    summary.figures().errorBudget().isPresent());
        } catch (ResultsException e) {
            throw e;
        } catch (IOException e) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED, folder, "holds no finished results: " + e.getMessage(), e);
        }
    }

    private static FinishedRun readFiles(Path folder) throws IOException {
        FileChanges.requireUnchanged(folder, READ);
        Summary summary = new SummaryFile().read(folder);
        try (HeadsReader heads = new HeadsReader(folder.resolve("heads.nc"));
                BoresReader bores = new BoresReader(folder.resolve("bores.nc"))) {
            RunDescription description = description(summary, heads);
            Recording recording = new Recording(
                    bores.days(), bores.series(), heads.balances(), heads.grids(description), heads.notConfinedSince());
            return new FinishedRun(description, recording, summary.findings(), summary.limits(), summary.figures());
        }
    }

    private static RunDescription description(Summary summary, HeadsReader heads) throws IOException {
        return new RunDescription(
                summary.title(),
                summary.purpose(),
                summary.datum(),
                summary.coordinateReference().map(CoordinateReference::parse).map(MapReference::new),
                new RunCalendar(summary.start()),
                summary.endDay(),
                new Provenance(summary.toolVersion(), heads.scenarioText(), summary.inputs()),
                heads.aquifer(),
                heads.sealingBed(),
                heads.ground(),
                summary.stations(),
                summary.reportDates(),
                summary.measurements(),
                summary.assumptions());
    }
}

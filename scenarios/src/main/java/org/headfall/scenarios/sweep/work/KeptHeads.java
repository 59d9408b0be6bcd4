package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.headfall.scenarios.results.HeadsFile;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunWithoutFiles;

/** Heads of the grid of each run of a sweep, in a NetCDF file of its own. A file has its name once it is complete. */
final class KeptHeads {

    private final Path folder;

    /**
     * Heads of a sweep.
     *
     * @param results where results of the sweep go
     */
    KeptHeads(Path results) {
        folder = results.resolve("heads");
    }

    /**
     * Simulates a run and keeps its heads.
     *
     * @param number number of the run
     * @param plan the run
     * @param interference whether drawdown is to be split by cause
     * @return the run
     * @throws IOException if the file cannot be written
     */
    RunWithoutFiles.WithMaps simulate(int number, RunPlan plan, boolean interference) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve("run-" + number + ".nc");
        // Of a run that is made again, or was being made when the sweep was stopped.
        Files.deleteIfExists(file);
        Files.deleteIfExists(file.resolveSibling(file.getFileName() + ".part"));
        try (HeadsFile heads = new HeadsFile(file, plan.description(), Instant.now())) {
            RunWithoutFiles.WithMaps run = RunWithoutFiles.withMaps(plan, interference, List.of(heads));
            heads.complete();
            return run;
        }
    }
}

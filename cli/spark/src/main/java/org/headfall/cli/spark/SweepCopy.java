package org.headfall.cli.spark;

import java.io.IOException;
import java.io.Serial;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.SweepReader;
import org.headfall.scenarios.sweep.work.EngineException;
import org.headfall.scenarios.sweep.work.FilesOfSweep;
import org.headfall.scenarios.sweep.work.RunMaker;
import org.headfall.scenarios.sweep.work.WantedRuns;

/**
 * A sweep with all its files, to be sent to other computers, which need not see the folder that it is in.
 *
 * @param id different for every sweep that is sent
 * @param document name of the sweep document among the files
 * @param program program and version
 * @param files contents by name, relative to the folder of the sweep document
 */
record SweepCopy(String id, String document, String program, Map<String, byte[]> files) implements Serializable {

    @Serial
    private static final long serialVersionUID = 1L;

    /**
     * The copy of a sweep.
     *
     * @throws IOException if a file cannot be read, or lies outside the folder of the sweep document
     */
    static SweepCopy of(String id, WantedRuns wanted) throws IOException {
        Path document = wanted.document().toAbsolutePath().normalize();
        Path folder = Objects.requireNonNull(document.getParent());
        Map<String, byte[]> files = new TreeMap<>();
        add(files, folder, document);
        add(files, folder, wanted.sweep().base().document());
        for (UsedFile file : FilesOfSweep.of(wanted.sweep())) {
            add(files, folder, file.path());
        }
        return new SweepCopy(id, String.valueOf(document.getFileName()), wanted.program(), files);
    }

    private static void add(Map<String, byte[]> files, Path folder, Path file) throws IOException {
        Path absolute = file.toAbsolutePath().normalize();
        if (!absolute.startsWith(folder)) {
            throw new EngineException(
                    file + ": lies outside the folder of the sweep document, of which alone a cluster gets"
                            + " a copy; copy the file into that folder");
        }
        files.put(folder.relativize(absolute).toString().replace('\\', '/'), Files.readAllBytes(absolute));
    }

    /**
     * Unpacks the copy and gets ready to make its runs.
     *
     * @param threads threads that will ask for runs at a time
     * @throws InputException if the documents have a problem here that they had not where they come from
     * @throws IOException if the files cannot be written or read
     */
    RunMaker maker(int threads) throws InputException, IOException {
        Path folder = Files.createTempDirectory("headfall-sweep");
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path target = folder.resolve(file.getKey());
            Files.createDirectories(Objects.requireNonNull(target.getParent()));
            Files.write(target, file.getValue());
        }
        SweepDocument sweep = SweepReader.read(folder.resolve(document), FileReach.FOLDER_OF_DOCUMENT, program);
        return new RunMaker(sweep, new RunList(sweep), program, threads, Optional.empty());
    }

    @Override
    public String toString() {
        return document + " with " + files.size() + " files";
    }
}

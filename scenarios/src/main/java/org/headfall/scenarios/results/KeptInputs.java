package org.headfall.scenarios.results;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.headfall.scenarios.document.UsedFile;

/**
 * The scenario document and the files that it names, kept in the results as {@code inputs.zip}. Files outside the folder
 * of the document are not in it: what they are called there says nothing about where they would have to be.
 */
public final class KeptInputs implements RunOutput {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "inputs.zip";

    /** The same inputs give the same bytes: entries carry the first day of the format instead of a date. */
    private static final long NO_DATE = 315_532_800_000L;

    private final List<UsedFile> files;

    /**
     * Inputs of a run.
     *
     * @param files the document and every file that it names
     */
    public KeptInputs(List<UsedFile> files) {
        this.files = List.copyOf(files);
    }

    @Override
    public void write(Path folder, FinishedRun run) throws IOException {
        Path part = folder.resolve(NAME + ".part");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(part))) {
            for (UsedFile file : files) {
                if (isWithin(file.name())) {
                    ZipEntry entry = new ZipEntry(file.name());
                    entry.setTime(NO_DATE);
                    zip.putNextEntry(entry);
                    Files.copy(file.path(), zip);
                    zip.closeEntry();
                }
            }
        }
        Files.move(part, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * Unpacks the inputs of a run.
     *
     * @param results folder of the results
     * @param into an empty folder
     * @throws ResultsException if there are none, or an entry would leave the folder
     * @throws IOException if a file cannot be read or written
     */
    public static void unpack(Path results, Path into) throws IOException {
        Path kept = results.resolve(NAME);
        if (!Files.isRegularFile(kept)) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    results,
                    "holds no inputs to run again: " + NAME + " is missing; copy the folder anew or run the scenario"
                            + " again (headfall run)");
        }
        try {
            unpackFrom(kept, into);
        } catch (ZipException | EOFException e) {
            throw ResultsException.damaged(kept, "cannot be unpacked, it is no whole ZIP file", e);
        }
    }

    private static void unpackFrom(Path kept, Path into) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(kept))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (!isWithin(entry.getName())) {
                    throw new ResultsException(
                            ResultsException.Kind.DAMAGED,
                            kept,
                            "has an entry that leaves its folder: " + entry.getName());
                }
                Path file = into.resolve(entry.getName());
                Files.createDirectories(file.getParent());
                copy(zip, file);
            }
        }
    }

    private static void copy(InputStream from, Path file) throws IOException {
        try (OutputStream to = Files.newOutputStream(file)) {
            from.transferTo(to);
        }
    }

    /** Whether a name stays within the folder that it is relative to. */
    private static boolean isWithin(String name) {
        Path path = Path.of(name);
        return !path.isAbsolute() && !path.normalize().startsWith("..") && !name.isEmpty();
    }
}

package org.headfall.scenarios.results;

import java.io.File;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.problem.FileFailure;

/**
 * Folder of one run, or of another command, while it is being written. Everything goes into {@code NAME.part} beside the
 * final {@code NAME}; {@link #complete} gives it the final name. Closed without that, or killed, it stays as {@code NAME.part} with
 * whatever was on disk, and results that stood under the final name stay as they were. The next run of the same name
 * clears the leftovers. Nothing but files of the command is ever deleted, see {@link WrittenFiles}.
 */
public final class ResultsFolder implements AutoCloseable {

    /** Name of the file that keeps other runs out while the folder is written. */
    static final String LOCK = ".lock";

    private static final String PART = ".part";
    private static final String REPLACED = ".replaced";
    private static final long FULL = 1 << 20;

    private final Path target;
    private final Path part;
    private final Path replaced;
    private final FileChannel lockChannel;
    private final WrittenFiles files;

    private ResultsFolder(Path target, Path part, Path replaced, FileChannel lockChannel, WrittenFiles files) {
        this.files = files;
        this.target = target;
        this.part = part;
        this.replaced = replaced;
        this.lockChannel = lockChannel;
    }

    /**
     * Opens a folder for a run.
     *
     * @param target final folder of the results; folders above it are made
     * @param overwrite whether results that stand there may be replaced, once the new ones are complete
     * @param files the files that will be written; a folder with any other is kept
     * @return the open folder
     * @throws ResultsException if {@link #requireFree} refuses the place, another run writes there, or the folder cannot be
     *     written to
     */
    public static ResultsFolder open(Path target, boolean overwrite, WrittenFiles files) throws ResultsException {
        requireFree(target, overwrite, files);
        Path full = target.toAbsolutePath().normalize();
        try {
            full = real(target);
            Path part = sibling(full, PART);
            Path replaced = sibling(full, REPLACED);
            Files.createDirectories(part);
            FileChannel channel = lock(part, full);
            clear(part);
            return new ResultsFolder(full, part, replaced, channel, files);
        } catch (IOException e) {
            throw explained(e, full);
        }
    }

    /**
     * Checks that results may go to a place; all that is changed there is that results get their name back which a run killed
     * at its end left under another. {@link #open} checks it too; a command that reads or computes before asks at its very
     * beginning, so that nobody waits for a refusal.
     *
     * @param target final folder of the results
     * @param overwrite whether results that stand there may be replaced
     * @param files the files that will be written; a folder with any other is kept
     * @throws ResultsException if results exist and may not be replaced, a review in them was filled in, the place lies within
     *     other results, or something else stands there
     */
    public static void requireFree(Path target, boolean overwrite, WrittenFiles files) throws ResultsException {
        Path full = target.toAbsolutePath().normalize();
        try {
            full = real(target);
            if (full.getFileName() == null) {
                throw new ResultsException(
                        ResultsException.Kind.FOREIGN, full, "is no place for results; name a new folder");
            }
            Path replaced = sibling(full, REPLACED);
            restoreInterruptedReplacement(full, replaced);
            requireOutsideResults(full);
            for (Path place : List.of(full, sibling(full, PART), replaced)) {
                files.requireNothingElse(place);
            }
            FilledReview.requireNone(full);
            if (!overwrite && WrittenFiles.hasEntries(full)) {
                throw new ResultsException(ResultsException.Kind.EXISTS, full, "results exist; they are kept");
            }
        } catch (IOException e) {
            throw explained(e, full);
        }
    }

    private static Path real(Path target) throws IOException {
        Path full = target.toAbsolutePath().normalize();
        return Files.exists(full) ? full.toRealPath() : full;
    }

    /** A folder within results would look like a part of them, and keep the run from being made again there. */
    private static void requireOutsideResults(Path target) throws ResultsException {
        for (Path above = target.getParent(); above != null; above = above.getParent()) {
            if (Files.isRegularFile(above.resolve(CaseTable.NAME))
                    || (Files.isRegularFile(above.resolve(SummaryFile.NAME))
                            && Files.isRegularFile(above.resolve("limits.csv")))) {
                throw new ResultsException(
                        ResultsException.Kind.FOREIGN,
                        target,
                        "lies within the results in " + above
                                + "; they are kept as they are, name a folder beside them");
            }
        }
    }

    private static Path sibling(Path target, String ending) {
        return target.resolveSibling(target.getFileName() + ending);
    }

    /** A run killed between the two renames of {@link #complete} leaves the old results under another name. */
    private static void restoreInterruptedReplacement(Path target, Path replaced) throws IOException {
        if (Files.exists(replaced) && !Files.exists(target)) {
            Files.move(replaced, target);
        }
    }

    private static FileChannel lock(Path part, Path target) throws IOException {
        FileChannel channel = FileChannel.open(part.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            lock = null;
        }
        if (lock == null) {
            channel.close();
            throw new ResultsException(
                    ResultsException.Kind.IN_USE,
                    target,
                    "another run is writing these results; wait for it or choose another output folder");
        }
        return channel;
    }

    private static void clear(Path part) throws IOException {
        try (Stream<Path> leftovers = Files.list(part)) {
            for (Path leftover : leftovers.toList()) {
                if (!leftover.getFileName().toString().equals(LOCK)) {
                    delete(leftover);
                }
            }
        }
    }

    /** Final folder of the results. */
    public Path target() {
        return target;
    }

    /** Path of a file while the run goes on. */
    public Path file(String name) {
        return part.resolve(name);
    }

    /**
     * Checks before the work that there is room.
     *
     * @param bytes expected size of all files
     * @throws ResultsException if the disk has less
     */
    public void requireSpace(long bytes) throws ResultsException {
        long usable = part.toFile().getUsableSpace();
        if (usable < bytes) {
            throw new ResultsException(
                    ResultsException.Kind.DISK_FULL,
                    target,
                    "results need about " + megabytes(bytes) + " MB, the disk has " + megabytes(usable)
                            + " MB; free some space, choose another output folder, or record fewer grids");
        }
    }

    private static long megabytes(long bytes) {
        return (bytes + 999_999) / 1_000_000;
    }

    /**
     * Gives the folder its final name. Older results go only when the new ones stand in their place.
     *
     * @throws ResultsException if a file is still unfinished or the folder cannot be renamed
     */
    public void complete() throws ResultsException {
        try {
            requireNoPartFiles();
            lockChannel.close();
            Files.deleteIfExists(part.resolve(LOCK));
            // looked at again: a run is long, and someone may have put files there
            files.requireNothingElse(target);
            FilledReview.requireNone(target);
            files.requireNothingElse(replaced);
            if (Files.exists(replaced)) {
                delete(replaced);
            }
            boolean replacing = Files.exists(target);
            if (replacing) {
                Files.move(target, replaced, StandardCopyOption.ATOMIC_MOVE);
            }
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            if (replacing) {
                delete(replaced);
            }
        } catch (IOException e) {
            throw explained(e, target);
        }
    }

    private void requireNoPartFiles() throws IOException {
        try (Stream<Path> written = Files.list(part)) {
            List<Path> unfinished =
                    written.filter(file -> file.toString().endsWith(PART)).toList();
            if (!unfinished.isEmpty()) {
                throw new IllegalStateException("still unfinished: " + unfinished);
            }
        }
    }

    /** Lets go of the folder. What was written stays in {@code NAME.part} unless it has been completed. */
    @Override
    public void close() throws IOException {
        lockChannel.close();
    }

    /**
     * The same failure with its cause in the user's words.
     *
     * @param failure what went wrong while writing
     * @param place folder or file
     * @return the exception to throw
     */
    public static ResultsException explained(IOException failure, Path place) {
        if (failure instanceof ResultsException known) {
            return known;
        }
        if (isFull(failure, place)) {
            return new ResultsException(
                    ResultsException.Kind.DISK_FULL,
                    place,
                    "the disk is full; free some space or choose another output folder",
                    failure);
        }
        return new ResultsException(
                ResultsException.Kind.NOT_WRITABLE,
                place,
                "cannot be written: " + FileFailure.reason(failure) + "; choose a folder that you may write to",
                failure);
    }

    private static boolean isFull(IOException failure, Path place) {
        String message = String.valueOf(failure.getMessage());
        if (message.contains("No space left") || message.contains("quota exceeded") || message.contains("disk full")) {
            return true;
        }
        Path existing = place.toAbsolutePath();
        while (existing.getParent() != null && !Files.exists(existing)) {
            existing = existing.getParent();
        }
        File disk = existing.toFile();
        // A file system that holds nothing, such as that of the processes, is not full.
        return disk.getTotalSpace() > 0 && disk.getUsableSpace() < FULL && Files.isWritable(existing);
    }

    /**
     * Deletes a folder with all that is in it.
     *
     * @param path the folder
     * @throws IOException if something in it cannot be deleted
     */
    public static void delete(Path path) throws IOException {
        try (Stream<Path> all = Files.walk(path)) {
            for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}

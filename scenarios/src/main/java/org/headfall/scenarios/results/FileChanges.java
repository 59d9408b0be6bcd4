package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * How the files of a finished folder differ from what they were when it was finished, by their SHA-256 in {@code
 * summary.json}.
 *
 * @param folder folder of the results
 * @param changed how each changed file differs, in words, by its name
 * @param missing names of files that are gone
 * @param added names of files that the run has not written
 */
public record FileChanges(Path folder, Map<String, String> changed, List<String> missing, List<String> added) {

    /** Size up to which a glance hashes (bytes): more than tables have, less than grids. */
    private static final long AT_A_GLANCE = 2_000_000;

    /** Copies map and lists. */
    public FileChanges {
        changed = Map.copyOf(changed);
        missing = List.copyOf(missing);
        added = List.copyOf(added);
    }

    /**
     * Looks at every file of a folder.
     *
     * @param folder folder of finished results
     * @return what is not as it was written
     * @throws ResultsException if the summary is missing, damaged or of another format, or a file cannot be read
     */
    public static FileChanges in(Path folder) throws ResultsException {
        return in(folder, List.of(), Long.MAX_VALUE);
    }

    /**
     * Looks at every file of a folder, at large ones by their size alone: for commands that are over before grids are hashed
     * and do not read them.
     *
     * @param folder folder of finished results
     * @return what is not as it was written
     * @throws ResultsException as for {@link #in(Path)}
     */
    public static FileChanges atAGlance(Path folder) throws ResultsException {
        return in(folder, List.of(), AT_A_GLANCE);
    }

    /**
     * Looks at some files of a folder only.
     *
     * @param folder folder of finished results
     * @param names names of the files that a command reads
     * @throws ResultsException if one of them is not as it was written, or as for {@link #in(Path)}; one that is not there
     *     is left to those who need it
     */
    static void requireUnchanged(Path folder, List<String> names) throws ResultsException {
        in(folder, names, Long.MAX_VALUE).requireUnchanged(names);
    }

    /**
     * Looks at the folder around those of several cases, which keeps no hashes.
     *
     * @param folder folder that a run with cases has written
     * @return what is not of the run; the table itself is known by the numbers of a rerun alone
     * @throws ResultsException if the folder cannot be read
     */
    public static FileChanges aroundCases(Path folder) throws ResultsException {
        try {
            return new FileChanges(folder, Map.of(), List.of(), notAmong(Set.of(CaseTable.NAME), folder));
        } catch (IOException e) {
            throw new ResultsException(ResultsException.Kind.NOT_FINISHED, folder, "cannot be read: " + e, e);
        }
    }

    private static List<String> notAmong(Set<String> written, Path folder) throws IOException {
        List<String> added = new ArrayList<>();
        for (String name : FileStamp.names(folder)) {
            if (!written.contains(name)) {
                added.add(name);
            }
        }
        return added;
    }

    /** Changes among some files, all of them if none is named; files beyond a size are not hashed. */
    private static FileChanges in(Path folder, List<String> names, long hashedUpTo) throws ResultsException {
        try {
            Map<String, FileStamp> written = SummaryHead.read(folder).files();
            Map<String, String> changed = new LinkedHashMap<>();
            List<String> missing = new ArrayList<>();
            if (!SummarySeal.holds(Files.readString(folder.resolve(SummaryFile.NAME)))) {
                changed.put(SummaryFile.NAME, "was changed since it was written");
            }
            for (String name : new TreeSet<>(names.isEmpty() ? written.keySet() : names)) {
                Path file = folder.resolve(name);
                FileStamp stamp = written.get(name);
                if (!Files.isRegularFile(file)) {
                    missing.add(name);
                } else if (stamp == null) {
                    if (!name.equals(SummaryFile.NAME)) {
                        changed.put(name, "is not of this run, which wrote no such file");
                    }
                } else {
                    String difference =
                            stamp.bytes() <= hashedUpTo ? stamp.differenceOf(file) : stamp.differenceInSizeOf(file);
                    if (!difference.isEmpty()) {
                        changed.put(name, difference);
                    }
                }
            }
            return new FileChanges(folder, changed, missing, notAmong(written.keySet(), folder));
        } catch (ResultsException e) {
            throw e;
        } catch (IOException e) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED, folder, "holds no finished results: " + e.getMessage(), e);
        }
    }

    /**
     * Refuses changed files.
     *
     * @param names names of files that figures are read from
     * @throws ResultsException if one of them was changed; the message names every other changed file as well
     */
    public void requireUnchanged(Collection<String> names) throws ResultsException {
        Optional<String> first = names.stream().filter(changed::containsKey).findFirst();
        if (first.isPresent()) {
            String others = changed.keySet().stream()
                    .filter(name -> !name.equals(first.get()))
                    .sorted()
                    .collect(Collectors.joining(", "));
            throw ResultsException.damaged(
                    folder.resolve(first.get()),
                    changed.get(first.get()) + (others.isEmpty() ? "" : " (changed as well: " + others + ")"),
                    null);
        }
    }
}

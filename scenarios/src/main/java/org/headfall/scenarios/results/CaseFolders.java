package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Folders of the cases of a document, within the folder that a run with {@code cases} has written. */
public final class CaseFolders {

    private CaseFolders() {}

    /**
     * The folders, in order of their names.
     *
     * @param folder a folder
     * @return folders in it that hold finished runs; none if it was not written by a run with cases
     * @throws ResultsException if it cannot be read
     */
    public static List<Path> in(Path folder) throws ResultsException {
        if (!Files.isRegularFile(folder.resolve(CaseTable.NAME))) {
            return List.of();
        }
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(entry -> Files.isRegularFile(entry.resolve(SummaryFile.NAME)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new ResultsException(ResultsException.Kind.NOT_FINISHED, folder, "cannot be read: " + e, e);
        }
    }

    /**
     * Says that results are those of several cases.
     *
     * @param folder a folder
     * @param option option that a folder is named after, with a space behind; empty if it is an argument
     * @throws ResultsException if they are; the message names the folders of the cases
     */
    static void requireNone(Path folder, String option) throws ResultsException {
        List<Path> cases = in(folder);
        if (!cases.isEmpty()) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    folder,
                    "holds the results of several cases; name the folder of one of them: "
                            + cases.stream().map(Path::toString).collect(Collectors.joining(", "))
                            + (option.isEmpty() ? "" : "; such as: " + option + cases.get(0)));
        }
    }
}

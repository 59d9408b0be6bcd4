package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The checklist in results, {@code review.csv}, once a reviewer has filled it in: that work nobody can make again. */
final class FilledReview {

    private static final String NAME = "review.csv";

    private FilledReview() {}

    /**
     * Checks that results can be replaced without losing a review.
     *
     * @param folder folder of results or of several cases, or nothing
     * @throws ResultsException if a checklist in it is not as the run wrote it
     * @throws IOException if the folder cannot be read
     */
    static void requireNone(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        requireNoneIn(folder);
        for (Path inner : folders(folder)) {
            requireNoneIn(inner);
        }
    }

    private static List<Path> folders(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(Files::isDirectory).sorted().toList();
        }
    }

    private static void requireNoneIn(Path folder) throws IOException {
        Path review = folder.resolve(NAME);
        if (!Files.isRegularFile(review) || !Files.isRegularFile(folder.resolve(SummaryFile.NAME))) {
            return;
        }
        FileStamp written = stamp(folder);
        if (written != null && !written.differenceOf(review).isEmpty()) {
            throw new ResultsException(
                    ResultsException.Kind.FOREIGN,
                    review,
                    "was filled in or changed since the run wrote it; it is kept, move it away or name another folder for"
                            + " results");
        }
    }

    /** What the checklist was when it was written; absent if the summary does not say so any more. */
    private static @Nullable FileStamp stamp(Path folder) throws IOException {
        try {
            return SummaryHead.read(folder).files().get(NAME);
        } catch (ResultsException e) {
            return null;
        }
    }
}

package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Which files a run writes. Only a folder that holds nothing else may be cleared or replaced, so that a wrong name
 * after {@code --output} costs nobody a file.
 */
final class RunFiles {

    /** Finished ones and, with the ending {@code .part}, those that a stopped run left. */
    private static final Pattern NAMES = Pattern.compile("\\.lock"
            + "|(heads\\.nc|bores\\.nc|responses\\.nc|summary\\.json|report\\.html|bores\\.geojson"
            + "|(artesian-head|interference|bores|water-balance|limits|doubts|measured-heads)\\.csv"
            + "|(head|drawdown)-[0-9]{4}-[0-9]{2}-[0-9]{2}\\.tif)(\\.part)?");

    private static final int NAMED = 3;

    private RunFiles() {}

    /** Whether there is anything in a folder; false if there is no folder. */
    static boolean hasEntries(Path folder) throws IOException {
        return Files.exists(folder) && !entries(folder).isEmpty();
    }

    /**
     * Checks that a place is free, or a folder with nothing but files of a run.
     *
     * @throws ResultsException if it is anything else; the message names what was found
     */
    static void requireNothingElse(Path place) throws IOException {
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new ResultsException(
                    ResultsException.Kind.FOREIGN, place, "is no folder; it is kept, name another folder for results");
        }
        List<String> foreign = entries(place).stream()
                .filter(entry -> !isOfARun(entry))
                .map(entry -> entry.getFileName().toString())
                .sorted()
                .toList();
        if (!foreign.isEmpty()) {
            throw new ResultsException(
                    ResultsException.Kind.FOREIGN,
                    place,
                    "holds what no run has written (" + someOf(foreign)
                            + "); it is kept, move that away or name another folder for results");
        }
    }

    private static List<Path> entries(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.toList();
        }
    }

    private static boolean isOfARun(Path entry) {
        return NAMES.matcher(entry.getFileName().toString()).matches()
                && !Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS);
    }

    private static String someOf(List<String> names) {
        String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
        return names.size() > NAMED ? first + " and " + (names.size() - NAMED) + " more" : first;
    }
}

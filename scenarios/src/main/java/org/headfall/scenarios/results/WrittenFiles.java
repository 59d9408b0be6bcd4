package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Which files a command writes into its folder. Only a folder that holds nothing else may be cleared or replaced, so that
 * a wrong name after {@code --output} costs nobody a file.
 */
public final class WrittenFiles {

    private static final String NAMES_OF_A_RUN = "heads\\.nc|bores\\.nc|discharges\\.nc|responses\\.nc"
            + "|inputs\\.zip|(summary|evidence)\\.json|report\\.html|bores\\.geojson"
            + "|(artesian-head|accounts|assumptions|review|decline|recovery|interference|attribution|bores|water-balance|limits|doubts|measured-heads)\\.csv"
            + "|(head|drawdown)-[0-9]{4}-[0-9]{2}-[0-9]{2}\\.tif";
    private static final String NAMES_BESIDE_CASES = "limits-by-case\\.csv";

    /** Files of a run. */
    public static final WrittenFiles OF_A_RUN = named(NAMES_OF_A_RUN);

    /** Files of several cases: folders with files of a run each, and a table. */
    public static final WrittenFiles OF_CASES =
            new WrittenFiles(finishedOrLeft(NAMES_BESIDE_CASES), Optional.of(OF_A_RUN));

    /** Files of a run or of several cases, which only the document tells apart. */
    public static final WrittenFiles OF_A_RUN_OR_CASES =
            new WrittenFiles(finishedOrLeft(NAMES_OF_A_RUN + "|" + NAMES_BESIDE_CASES), Optional.of(OF_A_RUN));

    private static final int NAMED = 3;

    private final Pattern names;
    private final Optional<WrittenFiles> inFolders;

    private WrittenFiles(Pattern names, Optional<WrittenFiles> inFolders) {
        this.names = names;
        this.inFolders = inFolders;
    }

    /**
     * Files with certain names.
     *
     * @param names regular expression of the names of finished files; with the ending {@code .part} they are those that
     *     a stopped command left
     * @return the files
     */
    public static WrittenFiles named(String names) {
        return new WrittenFiles(finishedOrLeft(names), Optional.empty());
    }

    private static Pattern finishedOrLeft(String names) {
        return Pattern.compile("\\.lock|(" + names + ")(\\.part)?");
    }

    /** Whether there is anything in a folder; false if there is no folder. */
    static boolean hasEntries(Path folder) throws IOException {
        return Files.exists(folder) && !entries(folder).isEmpty();
    }

    /**
     * Checks that a place is free, or a folder with nothing but these files.
     *
     * @throws ResultsException if it is anything else; the message names what was found
     */
    void requireNothingElse(Path place) throws IOException {
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new ResultsException(
                    ResultsException.Kind.FOREIGN, place, "is no folder; it is kept, name another folder for results");
        }
        List<String> foreign = new ArrayList<>();
        for (Path entry : entries(place)) {
            if (!isOneOfThem(entry)) {
                foreign.add(entry.getFileName().toString());
            }
        }
        foreign.sort(Comparator.naturalOrder());
        if (!foreign.isEmpty()) {
            throw new ResultsException(
                    ResultsException.Kind.FOREIGN,
                    place,
                    "holds what was not written by this command (" + someOf(foreign)
                            + "); it is kept, move that away or name another folder for results");
        }
    }

    private static List<Path> entries(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.toList();
        }
    }

    private boolean isOneOfThem(Path entry) throws IOException {
        if (!Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)) {
            return names.matcher(entry.getFileName().toString()).matches();
        }
        if (inFolders.isEmpty()) {
            return false;
        }
        for (Path inner : entries(entry)) {
            if (!inFolders.get().isOneOfThem(inner)) {
                return false;
            }
        }
        return true;
    }

    private static String someOf(List<String> names) {
        String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
        return names.size() > NAMED ? first + " and " + (names.size() - NAMED) + " more" : first;
    }
}

package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileHash;

/**
 * What a file of a finished folder is known again by.
 *
 * @param bytes its size
 * @param sha256 SHA-256 of its bytes, 64 lower-case hexadecimal digits
 */
record FileStamp(long bytes, String sha256) {

    static FileStamp of(Path file) throws IOException {
        return new FileStamp(Files.size(file), FileHash.of(file));
    }

    /**
     * Stamps of the files that a run has written.
     *
     * @param folder folder of the results, with every file but {@code summary.json} in it
     * @param known stamps of some of them, found since they were written
     * @return the stamps by name, in order of the names
     */
    static Map<String, FileStamp> in(Path folder, Map<String, FileStamp> known) throws IOException {
        Map<String, FileStamp> stamps = new TreeMap<>();
        for (String name : names(folder)) {
            FileStamp stamp = known.get(name);
            stamps.put(name, stamp == null ? of(folder.resolve(name)) : stamp);
        }
        return stamps;
    }

    /**
     * Names of the files of a folder besides {@code summary.json}, which cannot hold a hash of all of itself, hidden ones, which
     * operating systems leave there too, and unfinished ones.
     */
    static Iterable<String> names(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(entry -> Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS))
                    .map(entry -> String.valueOf(entry.getFileName()))
                    .filter(name -> !name.equals(SummaryFile.NAME) && !name.startsWith(".") && !name.endsWith(".part"))
                    .sorted()
                    .toList();
        }
    }

    /** How a file differs from this, in words; empty if it is the same. */
    String differenceOf(Path file) throws IOException {
        String inSize = differenceInSizeOf(file);
        if (!inSize.isEmpty()) {
            return inSize;
        }
        return FileHash.of(file).equals(sha256)
                ? ""
                : "was changed since it was written: it has as many bytes as then, but not the same";
    }

    /** How the size of a file differs from this, in words; empty if it is the same. */
    String differenceInSizeOf(Path file) throws IOException {
        long found = Files.size(file);
        return found == bytes
                ? ""
                : "has " + found + " bytes, was written with " + bytes + ": it was cut short or changed";
    }
}

package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.headfall.scenarios.results.SummaryFile;

/** Compares a folder of results with that of the same run made again, file by file. */
final class FolderComparison {

    /** What a run takes depends on the computer, and how its files were packed shows in their hashes. */
    private static final Set<String> OF_THE_COMPUTER = Set.of(
            "ownSha256", "files", "figures.solver", "figures.secondsInAll", "figures.peakMemory", "figures.processors");

    private final Path before;
    private final Path now;
    private final UnaryOperator<String> versionNow;

    FolderComparison(Path before, Path now, UnaryOperator<String> versionNow) {
        this.before = before;
        this.now = now;
        this.versionNow = versionNow;
    }

    /** Every file that the run has written again; of one that is not in the results nothing is compared. */
    List<FileComparison> files() throws IOException {
        List<FileComparison> files = new ArrayList<>();
        for (String name : names(now)) {
            files.add(
                    Files.isRegularFile(before.resolve(name))
                            ? compared(name)
                            : FileComparison.notCompared(name, "is not in the results"));
        }
        return files;
    }

    private static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            Set<String> names = new TreeSet<>();
            entries.filter(Files::isRegularFile).forEach(file -> names.add(String.valueOf(file.getFileName())));
            return names;
        }
    }

    /** A file that cannot be read as what its name says differs as a whole. */
    private FileComparison compared(String name) {
        Path file = before.resolve(name);
        Path again = now.resolve(name);
        try {
            if (name.equals(SummaryFile.NAME)) {
                return new JsonComparison(versionNow, OF_THE_COMPUTER).of(file, again);
            }
            return switch (name.substring(name.lastIndexOf('.') + 1)) {
                case "nc" -> new NetcdfComparison().of(file, again);
                case "csv" -> new TableComparison(versionNow).of(file, again);
                case "json", "geojson" -> new JsonComparison(versionNow, Set.of()).of(file, again);
                case "tif" -> new RasterComparison().of(file, again);
                case "zip" -> entries(file, again);
                default -> throw new IllegalStateException("no way to compare " + name);
            };
        } catch (IOException | UncheckedIOException e) {
            return FileComparison.notCompared(name, "cannot be read any more");
        }
    }

    private static FileComparison entries(Path before, Path now) throws IOException {
        Tally tally = new Tally();
        Map<String, byte[]> again = entries(now);
        Map<String, byte[]> kept = entries(before);
        tally.texts(String.join(", ", kept.keySet()), String.join(", ", again.keySet()), () -> "files in it");
        kept.forEach((name, bytes) -> {
            if (Arrays.equals(bytes, again.get(name))) {
                tally.same();
            } else {
                tally.differs(name, "one file", "another");
            }
        });
        return tally.of(String.valueOf(before.getFileName()));
    }

    private static Map<String, byte[]> entries(Path zip) throws IOException {
        Map<String, byte[]> entries = new TreeMap<>();
        try (ZipFile file = new ZipFile(zip.toFile())) {
            for (ZipEntry entry : file.stream().toList()) {
                entries.put(entry.getName(), file.getInputStream(entry).readAllBytes());
            }
        }
        return entries;
    }
}

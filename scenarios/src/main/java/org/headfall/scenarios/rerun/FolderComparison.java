package org.headfall.scenarios.rerun;

import java.io.IOException;
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
import org.headfall.scenarios.report.ReportWriter;
import org.headfall.scenarios.results.SummaryFile;

/** Compares a folder of results with that of the same run made again, file by file. */
final class FolderComparison {

    /**
     * What a run takes depends on the computer: on its memory how often the same systems are solved for, and by rounding in how
     * many iterations. How its files were packed shows in their hashes.
     */
    private static final Set<String> OF_THE_COMPUTER = Set.of(
            "ownSha256",
            "files",
            "figures.solver.linearSolves",
            "figures.solver.linearIterations",
            "figures.solver.seconds",
            "figures.secondsInAll",
            "figures.peakMemory",
            "figures.processors");

    private final Path before;
    private final Set<String> ofTheResults;
    private final Path now;
    private final UnaryOperator<String> versionNow;

    /**
     * A comparison.
     *
     * @param before folder of the results
     * @param ofTheResults names of the files that the results say to consist of; others in the folder are none of them
     * @param now folder of the new run
     * @param versionNow puts the version of the program that runs in place of that which made the results
     */
    FolderComparison(Path before, Set<String> ofTheResults, Path now, UnaryOperator<String> versionNow) {
        this.before = before;
        this.ofTheResults = Set.copyOf(ofTheResults);
        this.now = now;
        this.versionNow = versionNow;
    }

    /** Every file of the results, but for the page, and every one that the run has written now. */
    List<FileComparison> files() throws IOException {
        Set<String> again = names(now);
        Set<String> all = new TreeSet<>(ofTheResults);
        all.remove(ReportWriter.NAME);
        all.addAll(again);
        List<FileComparison> files = new ArrayList<>();
        for (String name : all) {
            if (!again.contains(name)) {
                files.add(FileComparison.notCompared(name, "the run gives no such file"));
            } else if (Files.isRegularFile(before.resolve(name))) {
                files.add(compared(name));
            } else {
                files.add(FileComparison.notCompared(name, "is not in the results"));
            }
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
    private FileComparison compared(String name) throws IOException {
        Path file = before.resolve(name);
        Path again = now.resolve(name);
        try {
            if (name.equals(SummaryFile.NAME)) {
                return new JsonComparison(versionNow, OF_THE_COMPUTER).of(file, again);
            }
            return switch (name.substring(name.lastIndexOf('.') + 1)) {
                case "nc" -> new NetcdfComparison(versionNow).of(file, again);
                case "csv" -> new TableComparison(versionNow).of(file, again);
                case "json", "geojson" -> new JsonComparison(versionNow, Set.of()).of(file, again);
                case "tif" -> new RasterComparison().of(file, again);
                case "zip" -> entries(file, again);
                default -> throw new IllegalStateException("no way to compare " + name);
            };
        } catch (UnreadableException e) {
            return FileComparison.notCompared(name, String.valueOf(e.getMessage()));
        }
    }

    private static FileComparison entries(Path before, Path now) throws IOException {
        Tally tally = new Tally();
        Map<String, byte[]> again = entries(now);
        Map<String, byte[]> kept = UnreadableException.ifNotRead(() -> entries(before));
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

package org.headfall.scenarios.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.headfall.scenarios.problem.FileFailure;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.jspecify.annotations.Nullable;

/**
 * Finds the files a scenario document names, relative to the folder of the document, and remembers them.
 *
 * <p>A document from somebody else must not read the rest of the disk: unless {@link FileReach#ANYWHERE} is chosen, an
 * absolute path, a path that leaves the folder and a symbolic link that does so are problems.
 */
public final class ScenarioFolder {
    private static final int MOST_NEIGHBOURS = 10_000;

    private final Path document;
    private final Path folder;
    private final FileReach reach;
    private final Map<String, Path> used = new TreeMap<>();

    /**
     * The folder of a document. The document itself counts as used.
     *
     * @param document the scenario document
     * @param reach which files it may name
     */
    public ScenarioFolder(Path document, FileReach reach) {
        Path absolute = document.toAbsolutePath().normalize();
        Path parent = absolute.getParent();
        this.folder = parent == null ? absolute : parent;
        this.reach = reach;
        this.document = absolute;
        used.put(nameOf(absolute), absolute);
    }

    /** The scenario document. */
    public Path document() {
        return document;
    }

    /**
     * Finds a file.
     *
     * @param text the path as typed
     * @param place where it was typed
     * @param subject name of the key in messages
     * @param problems receives what is wrong
     * @return the file, which exists and is a regular file, or null after a problem has been reported
     */
    public @Nullable Path find(String text, Place place, String subject, Problems problems) {
        try {
            Path path = folder.resolve(text).normalize();
            @Nullable Finding finding = check(text, path);
            if (finding == null) {
                used.put(nameOf(path), path);
                return path;
            }
            problems.add(place, subject, finding);
        } catch (InvalidPathException invalid) {
            problems.add(place, subject, Finding.of(ProblemKind.FILE_MISSING, text, "the name of a file"));
        } catch (IOException unreadable) {
            problems.add(
                    place,
                    subject,
                    Finding.of(
                            ProblemKind.FILE_UNREADABLE,
                            text + " (" + FileFailure.reason(unreadable) + ")",
                            "a file that can be read"));
        }
        return null;
    }

    private @Nullable Finding check(String text, Path path) throws IOException {
        boolean inside = path.startsWith(folder) && !Path.of(text).isAbsolute();
        if (reach == FileReach.FOLDER_OF_DOCUMENT && !inside) {
            return outside(text);
        }
        if (!Files.exists(path)) {
            if (Files.isSymbolicLink(path)) {
                return Finding.of(
                        ProblemKind.FILE_MISSING,
                        text + ", a link to nothing",
                        "a file in the folder of the scenario document");
            }
            return new Finding(
                    ProblemKind.FILE_MISSING, text, "a file in the folder of the scenario document", nearest(path));
        }
        if (reach == FileReach.FOLDER_OF_DOCUMENT && !path.toRealPath().startsWith(folder.toRealPath())) {
            return outside(text + ", a link to elsewhere");
        }
        if (!Files.isRegularFile(path)) {
            return Finding.of(ProblemKind.FILE_UNREADABLE, text, "a file, not a folder or a device");
        }
        return Files.isReadable(path) ? null : Finding.of(ProblemKind.FILE_UNREADABLE, text, "a file that may be read");
    }

    private static Finding outside(String found) {
        return Finding.of(
                ProblemKind.FILE_OUTSIDE_FOLDER,
                found,
                "files in the folder of the scenario document or within it, or the option --allow-outside-files");
    }

    private @Nullable String nearest(Path missing) throws IOException {
        @Nullable Path parent = missing.getParent();
        @Nullable Path name = missing.getFileName();
        if (parent == null || name == null || !Files.isDirectory(parent)) {
            return null;
        }
        try (Stream<Path> neighbours = Files.list(parent)) {
            List<String> names = neighbours
                    .limit(MOST_NEIGHBOURS)
                    .map(path -> String.valueOf(path.getFileName()))
                    .sorted()
                    .toList();
            @Nullable String near = NearestSpelling.of(name.toString(), names);
            return near == null ? null : nameOf(parent.resolve(near));
        }
    }

    /**
     * The name of a file relative to this folder, with strokes {@code /} on every system.
     *
     * @param path the file
     */
    public String nameOf(Path path) {
        Path shown = path.startsWith(folder) ? folder.relativize(path) : path;
        return shown.toString().replace('\\', '/');
    }

    /**
     * Every file used so far with its hash, by name.
     *
     * @throws IOException if a file cannot be read any more
     */
    public List<UsedFile> usedFiles() throws IOException {
        List<UsedFile> files = new ArrayList<>();
        for (Map.Entry<String, Path> file : used.entrySet()) {
            Path path = file.getValue();
            files.add(new UsedFile(file.getKey(), path, Files.size(path), FileHash.of(path)));
        }
        return files;
    }
}

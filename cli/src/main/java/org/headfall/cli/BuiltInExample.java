package org.headfall.cli;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.headfall.scenarios.problem.Problem;

/** The example scenario that comes inside the jar of the module {@code scenarios}. */
final class BuiltInExample {

    private static final String FOLDER = "/examples/tessaby";

    private BuiltInExample() {}

    /**
     * Copies the example.
     *
     * @param target folder, made if missing
     * @throws IOException if it cannot be written
     */
    static void copyTo(Path target) throws IOException {
        URL location = Problem.class.getResource(FOLDER + "/scenario.yaml");
        if (location == null) {
            throw new IllegalStateException("the jar of the module scenarios lacks " + FOLDER);
        }
        try {
            URI uri = location.toURI();
            if (uri.getScheme().equals("jar")) {
                try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
                    copy(jar.getPath(FOLDER), target);
                }
            } else {
                copy(Path.of(uri).resolveSibling("."), target);
            }
        } catch (URISyntaxException impossible) {
            throw new IllegalStateException("a class path with " + location, impossible);
        }
    }

    private static void copy(Path source, Path target) throws IOException {
        List<Path> files;
        try (Stream<Path> tree = Files.walk(source)) {
            files = tree.filter(Files::isRegularFile).toList();
        }
        for (Path file : files) {
            Path copy = target.resolve(source.relativize(file).toString()).toAbsolutePath();
            Files.createDirectories(copy.resolve(".."));
            Files.copy(file, copy);
        }
    }
}

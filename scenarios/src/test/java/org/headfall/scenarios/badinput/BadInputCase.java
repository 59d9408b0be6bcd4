package org.headfall.scenarios.badinput;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A scenario folder with something wrong, kept as its difference from {@code bad-input/base}: files that replace those
 * of the base, and a file {@code change.txt} with lines to replace. There {@code in FILE} names a file, and lines that
 * begin with {@code "- "} are replaced by those after them that begin with {@code "+ "}. The file {@code expected.txt}
 * holds every message that a user must get, one a line.
 *
 * @param folder folder of the case
 */
record BadInputCase(Path folder) {
    private static final String BASE = "base";
    private static final String CHANGE = "change.txt";
    private static final String EXPECTED = "expected.txt";

    /** Every case, by name. */
    static List<BadInputCase> all() throws IOException {
        try (Stream<Path> folders = Files.list(home())) {
            return folders.filter(folder -> !folder.endsWith(BASE))
                    .sorted()
                    .map(BadInputCase::new)
                    .toList();
        }
    }

    /** Copies the files that nothing is wrong with. */
    static void copyBase(Path target) throws IOException {
        copy(home().resolve(BASE), target);
    }

    /** Writes the scenario folder of this case. */
    void copyTo(Path target) throws IOException {
        copyBase(target);
        copy(folder, target);
        Files.delete(target.resolve(EXPECTED));
        if (Files.exists(target.resolve(CHANGE))) {
            change(target);
            Files.delete(target.resolve(CHANGE));
        }
    }

    /** The messages a user must get. */
    String expected() throws IOException {
        return Files.readString(folder.resolve(EXPECTED));
    }

    private void change(Path target) throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve(CHANGE));
        Path file = target;
        int next = 0;
        while (next < lines.size()) {
            if (lines.get(next).startsWith("in ")) {
                file = target.resolve(lines.get(next++).substring(3));
            }
            List<String> old = new ArrayList<>();
            List<String> replacement = new ArrayList<>();
            next = take(lines, next, "- ", old);
            next = take(lines, next, "+ ", replacement);
            replace(file, old, replacement);
        }
    }

    private static int take(List<String> lines, int from, String mark, List<String> taken) {
        int next = from;
        while (next < lines.size() && lines.get(next).startsWith(mark)) {
            taken.add(lines.get(next++).substring(mark.length()));
        }
        return next;
    }

    private void replace(Path file, List<String> old, List<String> replacement) throws IOException {
        String text = "\n" + Files.readString(file);
        String wanted = "\n" + String.join("\n", old) + "\n";
        assertEquals(2, text.split(Pattern.quote(wanted), -1).length, () -> this + " replaces " + wanted);
        String lines = replacement.isEmpty() ? "\n" : "\n" + String.join("\n", replacement) + "\n";
        Files.writeString(file, text.replace(wanted, lines).substring(1));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName().toString()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    private static Path home() {
        try {
            return Path.of(BadInputCase.class.getResource("/bad-input").toURI());
        } catch (URISyntaxException impossible) {
            throw new UncheckedIOException(new IOException(impossible));
        }
    }

    @Override
    public String toString() {
        return folder.getFileName().toString();
    }
}

package org.headfall.scenarios.document;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.headfall.scenarios.problem.FileFailure;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Reads a YAML file into a tree of nodes that know their place. */
public final class DocumentParser {
    /** Largest document (bytes). */
    public static final long LARGEST_DOCUMENT = 20_000_000;

    private static final int MOST_LISTED = 10;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final String file;
    private final Problems problems;

    /**
     * Makes a parser for one document.
     *
     * @param file name of the file for places
     * @param problems receives what is wrong
     */
    public DocumentParser(String file, Problems problems) {
        this.file = file;
        this.problems = problems;
    }

    /**
     * Reads a file.
     *
     * @param path the file
     * @return the document, or null if it cannot be read as a whole; then at least one problem is reported
     */
    public @Nullable DocumentNode parse(Path path) {
        try {
            if (!Files.exists(path)) {
                return refuse(ProblemKind.FILE_MISSING, "nothing of that name", allowedDocuments(path));
            }
            if (!Files.isRegularFile(path)) {
                return refuse(ProblemKind.FILE_UNREADABLE, path.toString(), "a file, not a folder or a device");
            }
            if (Files.size(path) > LARGEST_DOCUMENT) {
                return refuse(
                        ProblemKind.FILE_TOO_LARGE,
                        "a file of " + Files.size(path) / 1_000_000 + " MB",
                        "at most " + LARGEST_DOCUMENT / 1_000_000
                                + " MB; put long lists into CSV files beside the document");
            }
            @Nullable String text = decode(Files.readAllBytes(path));
            return text == null ? null : parse(text);
        } catch (IOException unreadable) {
            return refuse(
                    ProblemKind.FILE_UNREADABLE,
                    path + " (" + FileFailure.reason(unreadable) + ")",
                    "a file that can be read");
        }
    }

    /** What could be named instead of a document that is not there. */
    private static String allowedDocuments(Path missing) throws IOException {
        @Nullable Path parent = missing.toAbsolutePath().getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            return "the name of a scenario document, or of a folder with a scenario.yaml in it";
        }
        try (Stream<Path> neighbours = Files.list(parent)) {
            List<String> documents = neighbours
                    .map(path -> String.valueOf(path.getFileName()))
                    .filter(name -> name.endsWith(".yaml") || name.endsWith(".yml"))
                    .sorted()
                    .limit(MOST_LISTED)
                    .toList();
            return documents.isEmpty()
                    ? "the name of a scenario document, or of a folder with a scenario.yaml in it"
                    : "the name of a scenario document; in that folder: " + String.join(", ", documents);
        }
    }

    /**
     * Reads a document from memory.
     *
     * @param text the document
     * @return the document, or null if it cannot be read as a whole; then at least one problem is reported
     */
    public @Nullable DocumentNode parse(String text) {
        String yaml = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setCodePointLimit(Integer.MAX_VALUE)
                .build();
        NodeBuilder builder = new NodeBuilder(file, problems);
        try {
            for (Event event : new Parse(settings).parseString(yaml)) {
                if (!builder.accept(event)) {
                    return null;
                }
            }
        } catch (MarkedYamlEngineException syntax) {
            return refuseSyntax(syntax);
        } catch (ReaderException character) {
            Place place = placeOf(yaml, character.getPosition());
            String found = String.format(Locale.ROOT, "the character U+%04X", character.getCodePoint());
            problems.add(place, file, Finding.of(ProblemKind.SYNTAX, found, "printable characters"));
            return null;
        } catch (YamlEngineException other) {
            return refuse(ProblemKind.SYNTAX, String.valueOf(other.getMessage()), "a YAML 1.2 document");
        }
        @Nullable DocumentNode document = builder.document();
        return document != null ? document : refuse(ProblemKind.EMPTY_VALUE, "nothing", "a scenario document");
    }

    private @Nullable String decode(byte[] bytes) {
        @Nullable Finding notText = TextEncoding.fault(bytes, bytes.length);
        if (notText != null) {
            problems.add(Place.ofFile(file), file, notText);
            return null;
        }
        CharBuffer characters = CharBuffer.allocate(bytes.length);
        ByteBuffer unread = ByteBuffer.wrap(bytes);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .decode(unread, characters, true);
        String text = characters.flip().toString();
        if (result.isUnderflow()) {
            return text;
        }
        String found = String.format(Locale.ROOT, "the byte 0x%02X", bytes[unread.position()]);
        Finding finding = Finding.of(ProblemKind.ENCODING, found, "text saved as UTF-8");
        problems.add(placeOf(text, text.codePointCount(0, text.length())), file, finding);
        return null;
    }

    private @Nullable DocumentNode refuseSyntax(MarkedYamlEngineException syntax) {
        Optional<Mark> mark = syntax.getProblemMark().or(syntax::getContextMark);
        Place place = mark.map(at -> new Place(file, at.getLine() + 1, at.getColumn() + 1))
                .orElse(Place.ofFile(file));
        SyntaxWords words = SyntaxWords.of(syntax, syntax.getContextMark().map(Mark::getLine));
        problems.add(place, file, Finding.of(ProblemKind.SYNTAX, words.found(), words.allowed()));
        return null;
    }

    private Place placeOf(String text, int codePointsBefore) {
        int line = 1;
        int column = 1;
        int index = 0;
        for (int i = 0; i < codePointsBefore && index < text.length(); i++) {
            int point = text.codePointAt(index);
            index += Character.charCount(point);
            line += point == '\n' ? 1 : 0;
            column = point == '\n' ? 1 : column + 1;
        }
        return new Place(file, line, column);
    }

    private @Nullable DocumentNode refuse(ProblemKind kind, String found, String allowed) {
        problems.add(Place.ofFile(file), file, Finding.of(kind, found, allowed));
        return null;
    }
}

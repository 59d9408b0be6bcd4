package org.headfall.scenarios.vector;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.problem.JsonFault;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.json.JsonFactory;

/** The tokens of a JSON file one by one, each with its place; every fault of the file becomes one kind of exception. */
final class JsonText implements AutoCloseable {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final Path file;
    private final JsonFactory factory;
    private final JsonParser parser;

    private JsonText(Path file, JsonFactory factory, JsonParser parser) {
        this.file = file;
        this.factory = factory;
        this.parser = parser;
    }

    static JsonText open(Path file, VectorLimits limits) throws IOException {
        StreamReadConstraints constraints = StreamReadConstraints.builder()
                .maxNestingDepth(limits.depth())
                .maxDocumentLength(limits.fileBytes())
                .build();
        JsonFactory factory = JsonFactory.builder()
                .streamReadConstraints(constraints)
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        return new JsonText(file, factory, factory.createParser(ObjectReadContext.empty(), characters(file)));
    }

    private static Reader characters(Path file) throws IOException {
        Reader reader = new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
        return new WithoutByteOrderMark(reader);
    }

    /** Passes everything on but a byte order mark at the start, which some editors write. */
    private static final class WithoutByteOrderMark extends java.io.FilterReader {
        private boolean atStart = true;

        WithoutByteOrderMark(Reader reader) {
            super(reader);
        }

        @Override
        public int read(char[] buffer, int offset, int length) throws IOException {
            int count = in.read(buffer, offset, length);
            if (atStart && count > 0) {
                atStart = false;
                if (buffer[offset] == BYTE_ORDER_MARK) {
                    System.arraycopy(buffer, offset + 1, buffer, offset, count - 1);
                    return count == 1 ? in.read(buffer, offset, length) : count - 1;
                }
            }
            return count;
        }
    }

    /** Moves to the next token; null at the end of the file. */
    @Nullable
    JsonToken next() {
        try {
            return parser.nextToken();
        } catch (JacksonException broken) {
            throw fault(broken);
        }
    }

    /** The token that the text stands at; null at the end of the file. */
    @Nullable
    JsonToken token() {
        return parser.currentToken();
    }

    /** Where that token begins. */
    TextPosition position() {
        TokenStreamLocation location = parser.currentTokenLocation();
        return new TextPosition(Math.max(0, location.getLineNr()), Math.max(0, location.getColumnNr()));
    }

    /** The text of a string or a name. */
    String text() {
        try {
            return parser.getString();
        } catch (JacksonException broken) {
            throw fault(broken);
        }
    }

    /** The value of a number; a fault if it is too large to be one. */
    double number() {
        try {
            double value = parser.getDoubleValue();
            if (Double.isFinite(value)) {
                return value;
            }
            throw fault("a number that is too large", "numbers up to 1.8e308");
        } catch (JacksonException broken) {
            throw fault(broken);
        }
    }

    /** The list or object the text stands at, as JSON; moves to its end. */
    String nested() {
        StringWriter json = new StringWriter();
        try (JsonGenerator generator = factory.createGenerator(ObjectWriteContext.empty(), json)) {
            generator.copyCurrentStructure(parser);
        } catch (JacksonException broken) {
            throw fault(broken);
        }
        return json.toString();
    }

    /** Moves to the end of the list or object the text stands at, if it stands at one. */
    void skip() {
        try {
            parser.skipChildren();
        } catch (JacksonException broken) {
            throw fault(broken);
        }
    }

    /** What the token is, in words. */
    String shown() {
        @Nullable JsonToken token = token();
        if (token == null) {
            return "the end of the file";
        }
        return switch (token) {
            case START_OBJECT -> "an object";
            case START_ARRAY -> "a list";
            case END_OBJECT, END_ARRAY -> "the end of a list or object";
            case VALUE_STRING -> "the text \"" + text() + "\"";
            default -> text();
        };
    }

    SpatialFormatException fault(String found, String allowed) {
        return fault(position(), found, allowed);
    }

    SpatialFormatException fault(TextPosition at, String found, String allowed) {
        return SpatialFormatException.at(file, at.line(), at.column(), found, allowed);
    }

    private SpatialFormatException fault(JacksonException broken) {
        TokenStreamLocation location = broken.getLocation() == null ? parser.currentLocation() : broken.getLocation();
        TextPosition at = new TextPosition(Math.max(0, location.getLineNr()), Math.max(0, location.getColumnNr()));
        if (broken.getCause() instanceof CharacterCodingException) {
            return fault(at, "bytes that are not UTF-8 text", "GeoJSON saved as UTF-8")
                    .causedBy(broken);
        }
        String allowed = broken instanceof StreamConstraintsException
                ? "GeoJSON of usual size and depth"
                : "JSON: names in quotes, commas between values, brackets in pairs";
        return fault(at, JsonFault.found(broken), allowed).causedBy(broken);
    }

    @Override
    public void close() {
        parser.close();
    }
}

package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * What has to be known of {@code summary.json} before the rest of a folder is read: whether this version can read it, and
 * what its files were when they were written, so that one that was cut short or changed is not taken for whole.
 *
 * @param format format of the file
 * @param toolVersion program and version that wrote it
 * @param files every other file of the folder, by name
 */
record SummaryHead(int format, String toolVersion, Map<String, FileStamp> files) {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** A summary of an older format has no files to hold others against. */
    SummaryHead {
        files = files == null ? Map.of() : Map.copyOf(files);
    }

    /**
     * Reads it.
     *
     * @param folder folder of finished results
     * @return the head
     * @throws ResultsException if it is missing, damaged or of another format
     * @throws IOException if it cannot be read
     */
    static SummaryHead read(Path folder) throws IOException {
        Path file = folder.resolve(SummaryFile.NAME);
        if (!Files.isRegularFile(file)) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    folder,
                    "holds no finished results: " + SummaryFile.NAME
                            + " is missing; name a folder that headfall run has written");
        }
        SummaryHead head = parsed(file);
        if (head.format() != Summary.FORMAT) {
            throw new ResultsException(
                    ResultsException.Kind.DAMAGED,
                    file,
                    "was written by " + head.toolVersion() + " in format " + head.format()
                            + ", this version reads format " + Summary.FORMAT
                            + ": run the scenario again (headfall run); its document and files are in "
                            + KeptInputs.NAME + " beside it");
        }
        return head;
    }

    private static SummaryHead parsed(Path file) throws IOException {
        try {
            SummaryHead head = MAPPER.readValue(Files.readString(file), SummaryHead.class);
            if (head == null || head.toolVersion() == null) {
                throw ResultsException.damaged(file, "is no summary of a run", null);
            }
            return head;
        } catch (JacksonException e) {
            throw damaged(file, e);
        } catch (CharacterCodingException e) {
            throw ResultsException.damaged(file, "is no summary of a run: its bytes are no UTF-8", e);
        }
    }

    /** That a file is no summary. What the parser expected there would tell a user nothing. */
    static ResultsException damaged(Path file, JacksonException cause) {
        TokenStreamLocation location = cause.getLocation();
        String place = location == null || location.getLineNr() < 1
                ? ""
                : ": line " + location.getLineNr() + ", column " + location.getColumnNr() + " cannot be read";
        return ResultsException.damaged(file, "is no summary of a run, or only a part of one" + place, cause);
    }
}

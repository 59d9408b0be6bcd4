package org.headfall.scenarios.results;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.RunDescription;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes and reads {@code summary.json}. */
public final class SummaryFile {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "summary.json";

    private final JsonMapper mapper = JsonMapper.builder()
            .enable(SerializationFeature.INDENT_OUTPUT)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results with every other file of the run in it, complete
     * @param run the run
     * @throws IOException if it cannot be written
     */
    public void write(Path folder, FinishedRun run) throws IOException {
        write(folder, run, Map.of());
    }

    /** Writes the file, with stamps of some files that are known already. */
    void write(Path folder, FinishedRun run, Map<String, FileStamp> known) throws IOException {
        write(folder, summary(run, FileStamp.in(folder, known)));
    }

    /**
     * Takes note of a file that was made again of the results.
     *
     * @param folder folder of the results
     * @param name name of the file in it
     * @throws IOException if the summary cannot be read or written
     */
    public void writtenAgain(Path folder, String name) throws IOException {
        Summary summary = read(folder);
        Map<String, FileStamp> files = new TreeMap<>(summary.files());
        files.put(name, FileStamp.of(folder.resolve(name)));
        write(folder, summary.withFiles(files));
    }

    private void write(Path folder, Summary summary) throws IOException {
        Path part = folder.resolve(NAME + ".part");
        Files.writeString(part, SummarySeal.sealed(text(summary)));
        Files.move(part, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
    }

    /** A summary as it is written, but for its seal. */
    String text(Summary summary) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = mapper.createGenerator(text)) {
            new RecordJson(json).write(summary);
        }
        return text.toString();
    }

    static Summary summary(FinishedRun run, Map<String, FileStamp> files) {
        RunDescription description = run.description();
        return new Summary(
                Summary.FORMAT,
                SummarySeal.OPEN,
                files,
                description.title(),
                description.purpose(),
                description.datum(),
                description.mapReference().map(MapReference::code),
                description.calendar().start(),
                description.calendar().at(description.endDay()),
                description.endDay(),
                description.provenance().toolVersion(),
                description.provenance().inputs(),
                description.assumptions(),
                description.stations(),
                description.reportDates(),
                description.measurements(),
                run.findings(),
                run.limits(),
                run.figures());
    }

    /** Reads a summary of this format, see {@link SummaryHead}. */
    Summary read(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        try {
            return mapper.readValue(Files.readString(file), Summary.class);
        } catch (JacksonException e) {
            throw SummaryHead.damaged(file, e);
        }
    }
}

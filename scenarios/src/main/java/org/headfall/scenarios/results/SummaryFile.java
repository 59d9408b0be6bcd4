package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.RunDescription;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes and reads {@code summary.json}. */
public final class SummaryFile {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "summary.json";

    private final JsonMapper mapper =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results
     * @param run the run
     * @throws IOException if it cannot be written
     */
    public void write(Path folder, FinishedRun run) throws IOException {
        Path part = folder.resolve(NAME + ".part");
        Files.writeString(part, text(run));
        Files.move(part, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * The text of the file.
     *
     * @param run the run
     * @return JSON
     */
    public String text(FinishedRun run) {
        RunDescription description = run.description();
        return mapper.writeValueAsString(new Summary(
                Summary.FORMAT,
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
                run.figures()));
    }

    Summary read(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        Summary summary;
        try {
            summary = mapper.readValue(Files.readString(file), Summary.class);
        } catch (JacksonException e) {
            throw new ResultsException(
                    ResultsException.Kind.DAMAGED, file, "is no summary of a run: " + e.getOriginalMessage(), e);
        }
        if (summary.format() != Summary.FORMAT) {
            throw new ResultsException(
                    ResultsException.Kind.DAMAGED,
                    file,
                    "found format " + summary.format() + ", this version reads format " + Summary.FORMAT);
        }
        return summary;
    }
}

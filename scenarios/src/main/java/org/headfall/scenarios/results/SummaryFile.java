package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
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
     * @param folder folder of the results; its NetCDF files must be complete
     * @param run the run
     * @throws IOException if it cannot be written
     */
    public void write(Path folder, FinishedRun run) throws IOException {
        Path part = folder.resolve(NAME + ".part");
        Files.writeString(part, text(run, SummaryHead.sizesIn(folder)));
        Files.move(part, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
    }

    private String text(FinishedRun run, Map<String, Long> netcdfSizes) {
        RunDescription description = run.description();
        return mapper.writeValueAsString(new Summary(
                Summary.FORMAT,
                netcdfSizes,
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

    /** Reads a summary of this format, see {@link SummaryHead#check}. */
    Summary read(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        try {
            return mapper.readValue(Files.readString(file), Summary.class);
        } catch (JacksonException e) {
            throw SummaryHead.damaged(file, e.getOriginalMessage(), e);
        }
    }
}

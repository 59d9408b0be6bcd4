package org.headfall.scenarios.evidence;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.FinishedRun;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes {@code evidence.json}, and of that {@code assumptions.csv} and {@code review.csv} as tables. */
public final class EvidenceFiles {

    /** Keeps a unit beside its number in the report; other programs would not find it. */
    private static final char NO_BREAK = '\u00a0';

    private EvidenceFiles() {}

    /**
     * Writes the files.
     *
     * @param folder folder of the results
     * @param run the run
     * @throws IOException if one cannot be written
     */
    public static void write(Path folder, FinishedRun run) throws IOException {
        Evidence evidence = Evidence.of(run);
        writeJson(folder.resolve("evidence.json"), evidence);
        CsvFile.write(
                folder.resolve("assumptions.csv"),
                List.of("assumed", "in this run", "data", "resources", "technical", "effect on the answer"),
                evidence.assumptions(),
                assumption -> new CsvLineCells()
                        .text(assumption.statement().replace(NO_BREAK, ' '))
                        .text(assumption.here().replace(NO_BREAK, ' '))
                        .text(assumption.data().words())
                        .text(assumption.resources().words())
                        .text(assumption.technical().words())
                        .text(assumption.effect().words()));
        CsvFile.write(
                folder.resolve("review.csv"),
                List.of("looked for", "state", "found", "source"),
                evidence.checklist(),
                item -> new CsvLineCells()
                        .text(item.item())
                        .text(item.state().words())
                        .text(item.found())
                        .text(item.source()));
    }

    private static void writeJson(Path file, Evidence evidence) throws IOException {
        JsonMapper mapper =
                JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.writeString(part, mapper.writeValueAsString(evidence));
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    }
}

package org.headfall.scenarios.allocation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;

/** The scenario document of a test in a folder of its own, changed as a text, planned for one thread and shared out. */
final class AllocationDocument {

    private static final Path EXAMPLE = Path.of("examples", "corella");

    private final Path folder;

    private AllocationDocument(Path folder) {
        this.folder = folder;
    }

    /** A document with a text of its own. */
    static AllocationDocument of(Path folder, String text) throws IOException {
        AllocationDocument document = new AllocationDocument(folder);
        Files.writeString(document.file(), text);
        return document;
    }

    /**
     * The example, made shorter.
     *
     * @param folder where its files go
     * @param period its period
     * @param reports after what it is reported
     * @param change after what rates change
     */
    static AllocationDocument ofExample(Path folder, String period, String reports, String change) throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        AllocationDocument document = new AllocationDocument(folder);
        document.change(text -> text.replace("from: 2027-07-01, for: 20 yr}", "from: 2027-07-01, for: " + period + "}")
                .replace("  for: 20 yr\n", "")
                .replace("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [" + reports + "]")
                .replace("rates_change_after: 10 yr", "rates_change_after: " + change));
        return document;
    }

    private Path file() {
        return folder.resolve("scenario.yaml");
    }

    void change(UnaryOperator<String> change) throws IOException {
        Files.writeString(file(), change.apply(Files.readString(file())));
    }

    void replace(String part, String by) throws IOException {
        change(text -> text.replace(part, by));
    }

    ScenarioReading reading() throws IOException {
        return ScenarioReader.read(file(), FileReach.FOLDER_OF_DOCUMENT);
    }

    RunPlan plan() throws Exception {
        return RunPlanner.plan(reading(), "test", 1);
    }

    AllocationResult allocate() throws Exception {
        return allocate(plan());
    }

    /** Rates for a plan of this document. */
    AllocationResult allocate(RunPlan plan) throws Exception {
        return allocate(plan, 10);
    }

    /** The same in so many rounds at most. */
    AllocationResult allocate(RunPlan plan, int mostRounds) throws Exception {
        return AllocationSearch.in(
                plan,
                RunPlanner.cases(reading(), "test", 1),
                reading().orThrow(),
                PlanningResponses.of(plan, folder),
                (stage, fraction) -> {},
                mostRounds);
    }
}

package org.headfall.scenarios.sweep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.SweepReader;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.work.Part;
import org.headfall.scenarios.sweep.work.Sweep;
import org.headfall.scenarios.sweep.work.SweepProgress;
import org.headfall.scenarios.sweep.work.SweepSettings;
import org.headfall.scenarios.sweep.work.ThreadEngine;

/** A folder with the base scenario of the example, on 10 x 10 cells for two years, and a sweep of a test's own. */
public final class SweepFolder {

    public static final String PROGRAM = "Headfall under test";

    private final Path folder;

    public SweepFolder(Path folder) {
        this.folder = folder;
        try {
            String example = Files.readString(Path.of("examples/sweep/scenario.yaml"));
            Files.writeString(
                    folder.resolve("scenario.yaml"),
                    example.replace("cell: 2 km", "cell: 4 km")
                            .replace("for: 20 yr", "for: 2 yr")
                            .replace("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [1 yr, 2 yr]")
                            .replace("within 10 yr", "ever"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A sweep of all combinations of two rates and three transmissivities. */
    public static final String SIX_RUNS = """
            title: Six runs
            base: scenario.yaml
            vary:
              - {name: rate, key: bores.Town 1.rate, values: [10 L/s, 20 L/s]}
              - {name: transmissivity, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d, 400 m2/d]}
            design: full factorial
            keep:
              - {figure: loss, at: Coolabah Spring, after: 2 yr}
              - {figure: balance error}
            """;

    public Path write(String sweep) {
        try {
            return Files.writeString(folder.resolve("sweep.yaml"), sweep);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public Path base() {
        return folder.resolve("scenario.yaml");
    }

    public Path results() {
        return folder.resolve("results");
    }

    public Path store() {
        return results().resolve("sweep.sqlite");
    }

    public SweepDocument read(String sweep) throws InputException, IOException {
        return SweepReader.read(write(sweep), FileReach.FOLDER_OF_DOCUMENT, PROGRAM);
    }

    public static SweepSettings settings(int threads) {
        return new SweepSettings(threads, Part.WHOLE, false, false, OptionalDouble.empty(), OptionalLong.empty());
    }

    public Counts run(String sweep, SweepSettings settings) throws InputException, IOException {
        SweepDocument document = read(sweep);
        return new Sweep(
                        document,
                        folder.resolve("sweep.yaml"),
                        new ThreadEngine(),
                        settings,
                        results(),
                        PROGRAM,
                        new Silent())
                .run();
    }

    /** Says nothing. */
    private static final class Silent implements SweepProgress {
        @Override
        public void say(String line) {}

        @Override
        public void reached(int done, int failed, int all) {}
    }
}

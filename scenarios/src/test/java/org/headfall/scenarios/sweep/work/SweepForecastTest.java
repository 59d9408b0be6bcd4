package org.headfall.scenarios.sweep.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.SweepFolder;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of time and memory before and while runs are made. */
class SweepForecastTest {

    @TempDir
    private Path temporary;

    @Test
    void spreadIsFromTheFasterToTheSlowerHalf() {
        TimeRange range = SweepRecorder.spread(List.of(4.0, 1.0, 3.0, 2.0, 10.0));
        assertEquals(2, range.least(), 1e-12);
        assertEquals(17.0 / 3, range.most(), 1e-12);
    }

    @Test
    void timeIsToldInWords() {
        assertEquals("8 s to 3 min", new TimeRange(8, 180).words());
        assertEquals("about 3 min", new TimeRange(175, 185).words());
        assertEquals("up to 4 s", new TimeRange(0.2, 4).words());
    }

    @Test
    void shortageSaysHowManyRunsWillBeMade() {
        TimeRange time = new TimeRange(100, 400);
        assertEquals("", SweepForecast.shortage(time, 50, OptionalDouble.empty()));
        assertEquals("", SweepForecast.shortage(time, 50, OptionalDouble.of(400)));
        assertEquals(
                "that may be more than the 4 min allowed: between 26 and 50 of these 50 runs will probably be made; the same"
                        + " command goes on with the rest",
                SweepForecast.shortage(time, 50, OptionalDouble.of(210)));
        assertTrue(SweepForecast.shortage(time, 50, OptionalDouble.of(10))
                .startsWith("that is more than the 10 s allowed: between 1 and 5 of these 50 runs"));
    }

    /** Runs that share responses are quicker; more threads take more memory and less time. */
    @Test
    void moreThreadsTakeMoreMemoryAndLessTime() throws InputException, IOException {
        SweepForecast forecast = SweepForecast.of(new SweepFolder(temporary).read(SweepFolder.SIX_RUNS));
        assertEquals(6, forecast.runs());
        assertTrue(forecast.time(2).least() < forecast.time(1).least());
        assertEquals(1, forecast.threads(4, forecast.memoryOfRun()));
        assertEquals(3, forecast.threads(4, 3 * forecast.memoryOfRun()));
        assertTrue(forecast.memory(1).matches("about [1-9]\\d* MB of memory for 1 run at a time"), forecast.memory(1));
    }

    /** Of twelve runs in three groups, the first four of the same transmissivity need one set of responses, not three. */
    @Test
    void runsThatAreLeftAreChargedTheirOwnResponsesOnly() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS
                .replace("[10 L/s, 20 L/s]", "[10 L/s, 12 L/s, 15 L/s, 20 L/s]")
                .replace("  - {figure: balance error}\n", "");
        SweepForecast forecast = SweepForecast.of(new SweepFolder(temporary).read(sweep));
        assertEquals(12, forecast.shared());
        double ofOneGroup = forecast.time(List.of(1, 4), 1).least();
        double ofTwoGroups = forecast.time(List.of(1, 2), 1).least();
        assertTrue(ofOneGroup < ofTwoGroups, ofOneGroup + " s, " + ofTwoGroups + " s");
    }

    /** Three samples of two choices: runs 1 to 3 have the first choice, 4 to 6 the second. */
    @Test
    void beginsASampleOfEveryChoiceBeforeTheNext() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS
                .replace("values: [100 m2/d, 200 m2/d, 400 m2/d]", "uniform: {from: 100 m2/d, to: 400 m2/d}")
                .replace("design: full factorial", "design: latin hypercube\nsamples: 3\nfor_each_of: [rate]");
        SweepDocument document = new SweepFolder(temporary).read(sweep);
        SharedResponses responses = new SharedResponses(document, new RunList(document), SweepFolder.PROGRAM, 1);
        assertEquals(List.of(1, 4, 2, 5, 3, 6), responses.inOrderOfWork(List.of(1, 2, 3, 4, 5, 6)));
        assertEquals(List.of(4, 5, 3, 6), responses.inOrderOfWork(List.of(3, 4, 5, 6)));
    }

    @Test
    void looksAtEveryRunAndTellsThoseThatWouldFail() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS.replace("200 m2/d", "-200 m2/d");
        CheckedRuns runs = CheckedRuns.of(new SweepFolder(temporary).read(sweep), SweepFolder.PROGRAM, 60);
        assertEquals(6, runs.looked());
        assertEquals(
                List.of(List.of(2, 5)), List.copyOf(runs.invalid().byReason().values()));
    }
}

package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes all CSV tables of a run. */
public final class Tables {

    private Tables() {}

    /**
     * Writes {@code artesian-head.csv}, {@code decline.csv}, {@code interference.csv}, {@code attribution.csv}, {@code
     * bores.csv}, {@code water-balance.csv} and {@code limits.csv}; of a run with measured heads also {@code
     * measured-heads.csv}, of one whose responses reach beyond its end {@code recovery.csv}, and of one that was repeated to
     * find its errors {@code doubts.csv}.
     *
     * @param folder folder of the results
     * @param run the run
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder, FinishedRun run) throws IOException {
        writeFindings(folder, run);
        SeriesCsv.write(folder.resolve(SeriesCsv.NAME), run.description(), run.recording());
        AttributionCsv.write(folder.resolve(AttributionCsv.NAME), run.findings().attribution(), run.description());
        WaterBalanceCsv.write(
                folder.resolve("water-balance.csv"),
                run.recording().balances(),
                run.description().calendar());
        if (!run.description().measurements().isEmpty()) {
            MeasurementsCsv.write(folder.resolve("measured-heads.csv"), run);
        }
    }

    /** Writes the tables of limits and findings, but for what is put down to single bores. */
    static void writeFindings(Path folder, FinishedRun run) throws IOException {
        RunCalendar calendar = run.description().calendar();
        ArtesianHeadTable.write(
                folder.resolve("artesian-head.csv"), run.findings().artesianHead(), calendar);
        DeclineCsv.write(folder.resolve("decline.csv"), run);
        if (!run.findings().recovery().equals(Recoveries.NONE)) {
            RecoveryCsv.write(folder.resolve("recovery.csv"), run.findings().recovery(), calendar);
        }
        InterferenceCsv.write(
                folder.resolve("interference.csv"),
                run.findings().interference(),
                run.findings().interferenceMethod(),
                calendar);
        LimitsCsv.write(
                folder.resolve("limits.csv"),
                run.limits(),
                run.figures().errorBudget().isPresent(),
                run.description());
        if (run.figures().errorBudget().isPresent()) {
            DoubtsCsv.write(
                    folder.resolve("doubts.csv"), run.figures().errorBudget().get(), calendar);
        }
    }
}

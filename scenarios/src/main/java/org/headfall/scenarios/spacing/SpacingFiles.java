package org.headfall.scenarios.spacing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.planning.PlanningPageWriter;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.WrittenFiles;

/** Writes layouts that were compared: {@code spacing.csv} and {@code economic-spacing.csv}. */
public final class SpacingFiles {

    /** What a folder of layouts may hold. */
    public static final WrittenFiles NAMES = WrittenFiles.named("(economic-)?spacing\\.csv|spacing\\.html");

    private static final List<String> HEADER = List.of(
            "layout",
            "bores",
            "spacing (m)",
            "total yield at the given lift, equal drawdown in each bore (L/s)",
            "yield lost to interference (%)",
            "mean lift at the given rate, equal rates (m)",
            "mean lift by bores of the document (m)",
            "greatest lift (m)",
            "interference (m)",
            "pipe (m)",
            "energy (kWh/ML)",
            "cost (per ML)",
            "error of drawdown by a neighbour by the grid (%)",
            "error of mean lift by the grid (m)",
            "error of total yield by the grid (L/s)");

    private SpacingFiles() {}

    /**
     * Writes the files.
     *
     * @param folder folder that receives them
     * @param run the run in whose field they were compared
     * @param result the layouts
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder, RunDescription run, SpacingResult result) throws IOException {
        CsvFile.write(folder.resolve("spacing.csv"), HEADER, result.lines(), SpacingFiles::cells);
        List<String> header = new ArrayList<>(HEADER);
        header.add("remark");
        CsvFile.write(
                folder.resolve("economic-spacing.csv"),
                header,
                result.economic(),
                line -> cells(line).text(result.isAtEnd(line) ? "at the end of the range of spacings" : ""));
        PlanningPageWriter.write(SpacingPage.of(run, result), folder.resolve("spacing.html"));
    }

    private static CsvLineCells cells(SpacingResult.Line line) {
        return new CsvLineCells()
                .text(line.layout().name().toLowerCase(Locale.ROOT))
                .number(line.bores(), 0)
                .number(line.spacing(), 1)
                .number(DischargeUnit.LITRES_PER_SECOND.of(line.yield()), 3)
                .number(100 * line.yieldLost(), 2)
                .number(line.lift(), 3)
                .number(line.liftByDocument(), 3)
                .number(line.greatestLift(), 3)
                .number(line.interference(), 3)
                .number(line.pipe(), 1)
                .number(line.energy(), 2)
                .number(line.cost(), 3)
                .number(100 * line.gridError().response(), 3)
                .number(line.gridError().lift(), 3)
                .number(DischargeUnit.LITRES_PER_SECOND.of(line.gridError().yield()), 3);
    }
}

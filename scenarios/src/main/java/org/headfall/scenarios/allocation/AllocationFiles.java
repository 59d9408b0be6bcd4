package org.headfall.scenarios.allocation;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.planning.PlanningPageWriter;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.WrittenFiles;

/**
 * Writes an allocation: {@code rates.csv}, which bores of a document read as {@code rate: {file: rates.csv, column: NAME}},
 * {@code yields.csv}, {@code prices.csv} and {@code trading.csv}, {@code conflicts.csv} and {@code limits-not-counted.csv} where
 * there are any, and the page {@code rates.html} that holds the same.
 */
public final class AllocationFiles {

    /** What a folder of an allocation may hold. */
    public static final WrittenFiles NAMES =
            WrittenFiles.named("rates\\.html|(rates|yields|prices|trading|conflicts|limits-not-counted)\\.csv");

    private AllocationFiles() {}

    /**
     * Writes the files.
     *
     * @param folder folder that receives them
     * @param result the allocation
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder, AllocationResult result) throws IOException {
        List<PlanningTable> tables = AllocationTables.of(result);
        for (PlanningTable table : tables) {
            CsvFile.write(folder.resolve(table.file()), table.header(), table.rows(), CsvLineCells::ofTexts);
        }
        PlanningPageWriter.write(AllocationPage.of(result, tables), folder.resolve("rates.html"));
    }
}

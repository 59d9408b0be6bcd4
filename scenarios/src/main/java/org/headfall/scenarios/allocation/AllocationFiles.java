package org.headfall.scenarios.allocation;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.UncountedCsv;
import org.headfall.scenarios.results.WrittenFiles;

/**
 * Writes an allocation: {@code rates.csv}, which bores of a document read as {@code rate: {file: rates.csv, column: NAME}},
 * {@code yields.csv}, {@code prices.csv} and {@code trading.csv}.
 */
public final class AllocationFiles {

    /** What a folder of an allocation may hold. */
    public static final WrittenFiles NAMES =
            WrittenFiles.named("(rates|yields|prices|trading|conflicts|limits-not-counted)\\.csv");

    /** A microlitre a second is 0.00003 ML in a year, which no limit on a volume is written to. */
    private static final int DIGITS_OF_RATES = 6;

    private AllocationFiles() {}

    /**
     * Writes the files.
     *
     * @param folder folder that receives them
     * @param result the allocation
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder, AllocationResult result) throws IOException {
        rates(folder.resolve("rates.csv"), result);
        CsvFile.write(
                folder.resolve("yields.csv"),
                List.of("bore", "mean (ML/yr)", "mean (L/s)"),
                result.bores(),
                bore -> new CsvLineCells()
                        .text(bore.name())
                        .number(DischargeUnit.MEGALITRES_PER_YEAR.of(bore.yield()), 2)
                        .number(DischargeUnit.LITRES_PER_SECOND.of(bore.yield()), 3));
        prices(folder.resolve("prices.csv"), result);
        List<String> trading = List.of("place", "1 ML/yr less at", "allows at", "more (ML/yr)");
        CsvFile.write(
                folder.resolve("trading.csv"),
                trading,
                result.exchanges(),
                one -> new CsvLineCells()
                        .text(one.place())
                        .text(one.from())
                        .text(one.to())
                        .number(one.rate(), 3));
        if (!result.relaxed().isEmpty()) {
            conflicts(folder.resolve("conflicts.csv"), result);
        }
        if (!result.uncounted().isEmpty()) {
            UncountedCsv.write(folder.resolve(UncountedCsv.NAME), result.uncounted());
        }
    }

    private static void rates(Path target, AllocationResult result) throws IOException {
        List<String> header = new ArrayList<>(List.of("date"));
        result.bores().forEach(bore -> header.add(bore.name() + " (L/s)"));
        TreeSet<Double> days = new TreeSet<>();
        days.add(0.0);
        result.blocks().blocks().forEach(block -> {
            days.add(block.start());
            days.add(block.end());
        });
        days.removeIf(day -> day >= result.run().endDay());
        try (CsvFile file = new CsvFile(target, header)) {
            for (double day : days) {
                CsvLineCells cells =
                        new CsvLineCells().date(result.run().calendar().at(day));
                for (AllocationResult.BoreRates bore : result.bores()) {
                    cells.number(DischargeUnit.LITRES_PER_SECOND.of(rate(result, bore, day)), DIGITS_OF_RATES);
                }
                file.line(cells);
            }
            file.complete();
        }
    }

    private static double rate(AllocationResult result, AllocationResult.BoreRates bore, double day) {
        return result.blocks().blocks().stream()
                .filter(block -> block.start() <= day && day < block.end())
                .mapToDouble(block -> bore.rates().get(block.group()))
                .findFirst()
                .orElse(0);
    }

    private static void prices(Path target, AllocationResult result) throws IOException {
        List<String> header = List.of(
                "limit",
                "unit",
                "tightest on",
                "left by superposition",
                "left by the simulator",
                "kept free for the numerical error",
                "price",
                "unit of the price",
                "gain by 0.1 of the unit (" + result.goalUnit() + ")",
                "remark");
        CsvFile.write(target, header, result.requirements(), one -> {
            CsvLineCells cells = new CsvLineCells().text(one.name()).text(one.unit());
            if (Double.isNaN(one.day())) {
                cells.empty();
            } else {
                cells.date(result.run().calendar().at(one.day()));
            }
            return cells.number(one.predicted(), 4)
                    .number(one.simulated(), 4)
                    .number(one.reserve(), 4)
                    .number(one.price(), 4)
                    .text(result.priceUnit(one))
                    .number(one.gain(), 4)
                    .text(one.remark());
        });
    }

    private static void conflicts(Path target, AllocationResult result) throws IOException {
        CsvFile.write(
                target,
                List.of("limit", "allowed", "would have to be", "gives way by", "unit"),
                result.relaxed(),
                one -> new CsvLineCells()
                        .text(one.name())
                        .number(one.allowed(), 4)
                        .number(one.needed(), 4)
                        .number(one.amount(), 4)
                        .text(one.unit()));
    }
}

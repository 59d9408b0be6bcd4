package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every cell of the tables of a made-up allocation, read back by a reader of CSV of its own and worked by hand from its records. */
class AllocationFilesTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        AllocationFiles.write(folder, InventedAllocation.result(true));
    }

    private List<List<String>> csv(String file) throws IOException {
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(folder.resolve(file))) {
            return reader.stream().map(CsvRecord::getFields).toList();
        }
    }

    /** Day 365 from 1 July 2027 on is 30 June 2028, as 2028 has a 29 February. */
    @Test
    void pricesAreThoseOfTheRequirements() throws IOException {
        assertEquals(
                List.of(
                        List.of(
                                "limit",
                                "unit",
                                "tightest on",
                                "left by superposition",
                                "left by the simulator",
                                "kept free for the numerical error",
                                "price",
                                "unit of the price",
                                "gain by 0.1 of the unit (ML/yr)",
                                "remark"),
                        List.of(
                                "spring <keeps> (Lignum Spring)",
                                "m",
                                "2028-06-30",
                                "0.0015",
                                "0.0025",
                                "0.0015",
                                "286.3929",
                                "ML/yr per m",
                                "28.6393",
                                ""),
                        List.of(
                                "fence (Fence corner)",
                                "m",
                                "2028-06-30",
                                "6.0649",
                                "-6.0659",
                                "0.0015",
                                "0.0000",
                                "ML/yr per m",
                                "0.0000",
                                ""),
                        List.of(
                                "what the bore can bring up (Rest, \"2\")",
                                "m",
                                "",
                                "",
                                "",
                                "0.0000",
                                "0.0000",
                                "ML/yr per m",
                                "0.0000",
                                "gives no water at all")),
                csv("prices.csv"));
    }

    /** 1.5 L/s are 1.5 x 86400 x 365.25 / 1e6 = 47.3364 ML in a year. */
    @Test
    void yieldsAreThoseOfTheBores() throws IOException {
        assertEquals(
                List.of(
                        List.of("bore", "mean (ML/yr)", "mean (L/s)"),
                        List.of(InventedAllocation.EVIL, "47.34", "1.500"),
                        List.of("Rest, \"2\"", "0.00", "0.000")),
                csv("yields.csv"));
    }

    @Test
    void tradingSaysWhoGivesAndWhoTakes() throws IOException {
        assertEquals(
                List.of(
                        List.of("place", "1 ML/yr less at", "allows at", "more (ML/yr)"),
                        List.of("Lignum Spring", InventedAllocation.EVIL, "Rest, \"2\"", "1.250"),
                        List.of("Lignum Spring", "Rest, \"2\"", InventedAllocation.EVIL, "0.800")),
                csv("trading.csv"));
    }

    @Test
    void conflictsSayFromWhatToWhat() throws IOException {
        assertEquals(
                List.of(
                        List.of("limit", "allowed", "would have to be", "gives way by", "unit"),
                        List.of("spring <keeps> (Lignum Spring)", "3.0000", "3.2500", "0.2500", "m")),
                csv("conflicts.csv"));
    }

    /** From July on 1 L/s until October, then 2 and 1 L/s by turns; the run ends before the October of its last year. */
    @Test
    void ratesBeginOnTheirDates() throws IOException {
        List<List<String>> rates = csv("rates.csv");
        assertEquals(List.of("date", InventedAllocation.EVIL + " (L/s)", "Rest, \"2\" (L/s)"), rates.get(0));
        assertEquals(List.of("2027-07-01", "1.000000", "0.000000"), rates.get(1));
        assertEquals(List.of("2027-10-01", "2.000000", "0.000000"), rates.get(2));
        assertEquals(List.of("2028-04-01", "1.000000", "0.000000"), rates.get(3));
    }
}

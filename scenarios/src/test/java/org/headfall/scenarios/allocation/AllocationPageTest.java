package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a made-up allocation beside its files, read back by a reader of CSV of its own. */
class AllocationPageTest {

    private static final Map<String, String> TABLES = Map.of(
            "prices", "prices.csv",
            "yields", "yields.csv",
            "trading", "trading.csv",
            "rates", "rates.csv",
            "uncounted", "limits-not-counted.csv",
            "conflicts", "conflicts.csv");

    @TempDir
    private Path folder;

    private String page(boolean contradicts) throws IOException {
        AllocationFiles.write(folder, InventedAllocation.result(contradicts));
        return Files.readString(folder.resolve("rates.html"));
    }

    private List<List<String>> csv(String file) throws IOException {
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(folder.resolve(file))) {
            return reader.stream().map(CsvRecord::getFields).toList();
        }
    }

    private static List<String> parts(String text, String pattern) {
        return Pattern.compile(pattern, Pattern.DOTALL)
                .matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    /** Rows of a table of a page as texts, its head as the file has it. */
    private static List<List<String>> table(String page, String id) {
        String table = parts(page, "<table id=\"" + id + "\">(.*?)</table>").get(0);
        List<List<String>> rows = new ArrayList<>();
        for (String row : parts(table, "<tr>(.*?)</tr>")) {
            rows.add(parts(row, "<t[hd][^>]*>(.*?)</t[hd]>").stream()
                    .map(cell -> cell.replaceAll(" <span class=\"unit\">(.*?)</span>", " ($1)"))
                    .map(AllocationPageTest::unescaped)
                    .toList());
        }
        return rows;
    }

    private static String unescaped(String text) {
        return text.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&#34;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }

    @Test
    void everyTableHoldsTheCellsOfItsFile() throws IOException {
        String page = page(true);
        for (Map.Entry<String, String> table : TABLES.entrySet()) {
            List<List<String>> rows = csv(table.getValue());
            assertTrue(rows.size() > 1, table.getValue());
            assertEquals(rows, table(page, table.getKey()), table.getValue());
        }
    }

    /** By hand: 1.5 L/s are 1.5 x 86400 x 365.25 / 1e6 = 47.3364 ML in a year, and 20 kWh/d for 0.1296 ML/d 154.3 kWh/ML. */
    @Test
    void theAnswerComesFirstInTheWordsOfTheTerminal() throws IOException {
        String page = page(false);
        List<String> answers = parts(page, "<li dir=\"auto\">(.*?)</li>");
        assertEquals("Mean taking: 47.3 ML/yr, 154 kWh/ML, all bores together.", answers.get(0));
        assertTrue(
                answers.stream()
                        .anyMatch(one -> unescaped(one)
                                .equals(
                                        "Binds: spring <keeps> (Lignum Spring). 0.1 m more of it would let the bores take 28.6 ML/yr more in all"
                                                + " (price 286 ML/yr per m).")),
                answers::toString);
        assertTrue(answers.stream().anyMatch(one -> one.contains("2.0 L/s, at least for a time")), answers::toString);
        assertTrue(answers.stream().anyMatch(one -> one.contains("Shire 0.50 L/s")), answers::toString);
        assertTrue(
                answers.stream().anyMatch(one -> unescaped(one).equals("Bores that rest throughout: Rest, \"2\".")),
                answers::toString);
        assertEquals(List.of("47.34", "1.500"), table(page, "yields").get(1).subList(1, 3));
        assertFalse(page.contains("id=\"conflicts\""), "nothing contradicts");
        assertFalse(Files.exists(folder.resolve("conflicts.csv")));
    }

    @Test
    void aContradictionComesBeforeTheYield() throws IOException {
        List<String> answers = parts(page(true), "<li dir=\"auto\">(.*?)</li>");
        assertTrue(
                unescaped(answers.get(0)).endsWith("spring <keeps> (Lignum Spring): 0.250 m, from 3.00 to 3.25."),
                answers.get(0));
        assertFalse(answers.stream().anyMatch(one -> one.startsWith("Binds: spring")), answers::toString);
    }

    /** Where rounds ended too early no sentence promises that limits are kept, and what lacks comes before the yield. */
    @Test
    void whatTheSearchDidNotComeToIsSaid() throws IOException {
        AllocationResult.Rounds ended = new AllocationResult.Rounds(
                7, 3, false, List.of("spring <keeps> (" + InventedAllocation.SPRING + ")"), List.of());
        AllocationFiles.write(folder, InventedAllocation.result(false, ended));
        List<String> answers =
                parts(Files.readString(folder.resolve("rates.html")), "<li dir=\"auto\">(.*?)</li>").stream()
                        .map(AllocationPageTest::unescaped)
                        .toList();
        assertTrue(
                answers.get(0).startsWith("Not all limits are kept: the search ended after 10 rounds")
                        && answers.get(0).endsWith(": spring <keeps> (Lignum Spring)."),
                answers.get(0));
        assertTrue(answers.get(1).startsWith("Rates have not settled"), answers.get(1));
        assertTrue(answers.get(2).startsWith("Mean taking"), answers.get(2));
        assertFalse(answers.stream().anyMatch(one -> one.contains("finds it kept")), answers::toString);
        List<String> settled = parts(page(false), "<li dir=\"auto\">(.*?)</li>");
        assertTrue(settled.stream().anyMatch(one -> one.contains("finds it kept")), settled::toString);
        assertFalse(settled.stream().anyMatch(one -> one.contains("have not settled")), settled::toString);
    }

    /** Of many trades the file holds all, and the page few, with the same figures. */
    @Test
    void ofManyTradesThePageHoldsTheBest() throws IOException {
        AllocationResult result = InventedAllocation.result(false);
        List<AllocationResult.Exchange> many = new ArrayList<>();
        for (int place = 0; place < 60; place++) {
            many.add(new AllocationResult.Exchange(
                    "place " + place, InventedAllocation.EVIL, "other " + place, 0.5 + place));
        }
        AllocationFiles.write(
                folder,
                new AllocationResult(
                        result.run(),
                        result.asked(),
                        result.blocks(),
                        result.bores(),
                        result.evenly(),
                        result.yield(),
                        result.energy(),
                        result.requirements(),
                        result.relaxed(),
                        many,
                        result.goalUnit(),
                        result.uncounted(),
                        result.rounds()));
        assertEquals(61, csv("trading.csv").size());
        String page = Files.readString(folder.resolve("rates.html"));
        List<List<String>> shown = table(page, "trading");
        assertEquals(51, shown.size());
        assertEquals(List.of("place 59", InventedAllocation.EVIL, "other 59", "59.500"), shown.get(1));
        assertTrue(page.contains("trading.csv holds all 60 lines"), "where all are");
    }

    @Test
    void namesAreTextAndNothingIsFetched() throws IOException {
        String page = page(true);
        assertFalse(page.contains(InventedAllocation.EVIL) || page.contains("<img"), "names as elements");
        assertTrue(page.contains("\\u003c/script>\\u003cimg"), "names in the figures of the scripts");
        assertTrue(unescaped(page).contains("default-src 'none'"), "the policy");
        assertEquals(List.of(), parts(page, "((?:src|href)=\"(?!#)[^\"]*\"|@import|url\\([^)]*\\))"));
        assertFalse(page.contains("style=\""), "the policy forbids style attributes");
    }

    /** Charts by hand: half of the height at 1 of 2 L/s, and none of the bore that rests. */
    @Test
    void ratesAreStepsOfEverySeason() throws IOException {
        String page = page(false);
        List<String> paths = parts(page, "<path class=\"season-\\d\" d=\"(M[^\"]*L[^\"]*)\"");
        assertEquals(2, paths.size(), paths::toString);
        assertTrue(paths.get(0).matches("M25\\.\\d+ 0\\.00L1000\\.00 0\\.00"), paths.get(0));
        assertEquals("M0.00 50.00L1000.00 50.00", paths.get(1));
        assertTrue(page.contains("1 October to 31 March"));
    }
}

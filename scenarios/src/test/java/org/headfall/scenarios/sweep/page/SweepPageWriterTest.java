package org.headfall.scenarios.sweep.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.SweepFolder;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SweepPageWriterTest {

    @TempDir
    private Path temporary;

    @Test
    void saysTheAnswerAndWhatFailedAndFetchesNothing() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS
                        .replace("title: Six runs", "title: Six <b>runs</b> & more")
                        .replace("100 m2/d", "0 m2/d")
                        .replace("keep:\n", "keep:\n  - {figure: head over time, at: Coolabah Spring}\n")
                + """
                ask:
                  ranking: {figure: loss at Coolabah Spring after 2 yr, aim: smallest}
                  trade_off:
                    - {figure: loss at Coolabah Spring after 2 yr, aim: smallest}
                    - {figure: balance error, aim: smallest}
                  sensitivity: [loss at Coolabah Spring after 2 yr]
                """;
        SweepFolder folder = new SweepFolder(temporary);
        SweepDocument document = folder.read(sweep);
        folder.run(sweep, SweepFolder.settings(2));
        SweepTable table;
        try (SweepStore store = SweepStore.read(folder.store())) {
            table = SweepTable.read(document, store);
        }
        Path file = temporary.resolve("sweep.html");
        SweepPageWriter.write(table, SweepFolder.PROGRAM, file);
        String page = Files.readString(file);
        assertTrue(page.contains("<h1 dir=\"auto\">Six &lt;b&gt;runs&lt;/b&gt; &amp; more</h1>"), page);
        assertTrue(page.contains("4 of 6 runs have figures, 2 failed, 0 are not made yet."));
        assertTrue(page.contains("aquifer.transmissivity is out of range"));
        assertTrue(page.contains("a share of runs is no probability"));
        // The lower rate in the better aquifer: by Thiem drawdown goes as Q / T.
        assertTrue(page.contains("run 3 with"), page);
        assertTrue(page.contains("Head at Coolabah Spring over time"), page);
        assertTrue(page.contains("From 4 runs: below the lower edge lie"), page);
        assertTrue(page.contains("<path class=\"band\" d=\"M"), page);
        assertFalse(page.contains("Words for probabilities"), "there are none where every combination is run");
        assertFalse(page.contains("yr after the start (m above datum)"), "heads over time would crowd the tables");
        assertEquals(Optional.empty(), firstOutside(page));
        assertFalse(page.substring(0, page.indexOf("<script>")).contains("NaN"));
        assertFalse(Pattern.compile("style=\"").matcher(page).find(), "the policy forbids style attributes");
    }

    @Test
    void isWrittenWhereNoRunHasFinished() throws InputException, IOException {
        String sweep = SweepFolder.SIX_RUNS
                        // The bottom is at -150 m: no value is wrong by itself, and no run is valid.
                        .replace("key: aquifer.transmissivity", "key: aquifer.top")
                        .replace("[100 m2/d, 200 m2/d, 400 m2/d]", "[-200 m, -300 m]")
                        .replace("keep:\n", "keep:\n  - {figure: head over time, at: Coolabah Spring}\n")
                + """
                ask:
                  ranking: {figure: loss at Coolabah Spring after 2 yr, aim: smallest}
                  sensitivity: [loss at Coolabah Spring after 2 yr]
                """;
        SweepFolder folder = new SweepFolder(temporary);
        SweepDocument document = folder.read(sweep);
        folder.run(sweep, SweepFolder.settings(1));
        Path file = temporary.resolve("sweep.html");
        try (SweepStore store = SweepStore.read(folder.store())) {
            SweepPageWriter.write(SweepTable.read(document, store), SweepFolder.PROGRAM, file);
        }
        String page = Files.readString(file);
        assertTrue(page.contains("0 of 4 runs have figures, 4 failed"), page);
        assertFalse(page.contains("id=\"charts\""), "a heading without charts");
    }

    /** Anything that would be fetched. */
    private static Optional<String> firstOutside(String page) {
        return Pattern.compile("(src|href)=\"(?!#)[^\"]*\"|url\\((?!data:)[^)]*\\)|@import")
                .matcher(page)
                .results()
                .map(found -> found.group())
                .findFirst();
    }
}

package org.headfall.scenarios.sweep.page;

import java.util.List;
import java.util.regex.Pattern;
import org.headfall.scenarios.report.page.Inlined;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepSentences;
import org.headfall.scenarios.sweep.results.SweepTable;

/**
 * What the page of a sweep says, ready for its template.
 *
 * @param title title of the sweep
 * @param runs how many runs there are, have figures and failed, in a sentence
 * @param sentences the answer, most wanted first
 * @param scale what the words for probabilities mean; empty where none is used
 * @param tables tables with a caption and rows
 * @param charts charts
 * @param varied what varies and how runs were chosen, one sentence each
 * @param program program and version
 * @param style style sheet
 * @param script script that sorts and filters tables
 */
public record SweepPage(
        String title,
        String runs,
        List<String> sentences,
        String scale,
        List<Table> tables,
        List<Chart.Group> charts,
        List<String> varied,
        String program,
        Inlined style,
        Inlined script) {

    private static final int SHORT_HEAD = 12;
    private static final int LONG_HEAD = 36;
    private static final Pattern NUMBERS = Pattern.compile("[-–\\d(].{0,40}");
    private static final Pattern BEFORE_UNIT = Pattern.compile("(?<=\\d) (?=%|[a-zA-Z0-9]+/[a-z]|(m|yr)\\b)|(?<=±) ");
    private static final String RESOURCES = "/org/headfall/scenarios/";

    /** Copies the lists. */
    public SweepPage {
        sentences = List.copyOf(sentences);
        tables = List.copyOf(tables);
        charts = List.copyOf(charts);
        varied = List.copyOf(varied);
    }

    /**
     * A table.
     *
     * @param id its id in the page
     * @param caption what it shows
     * @param header heads of the columns
     * @param rows cells
     */
    public record Table(String id, String caption, List<String> header, List<List<String>> rows) {
        /** Copies the lists. */
        public Table {
            header = List.copyOf(header);
            rows = List.copyOf(rows);
        }

        /** How wide the column under a head must be for the head not to be taller than some lines. */
        public String width(String head) {
            if (head.length() > LONG_HEAD) {
                return "long";
            }
            return head.length() > SHORT_HEAD ? "words" : "";
        }

        /** Whether a cell is of numbers, which are not broken over lines. */
        public String kind(String cell) {
            return NUMBERS.matcher(cell).matches() ? "number" : "";
        }
    }

    /**
     * The page of a table of runs.
     *
     * @param table the runs
     * @param program program and version
     * @return the page
     */
    public static SweepPage of(SweepTable table, String program) {
        SweepFindings findings = SweepFindings.of(table);
        SweepSentences sentences = new SweepSentences(findings);
        return new SweepPage(
                table.sweep().title(),
                sentences.counts(),
                unbroken(sentences.answer()),
                unbroken(sentences.scale()),
                new SweepTables(findings).all(),
                SweepCharts.all(findings),
                unbroken(sentences.varied()),
                program,
                Inlined.ofResources(List.of(RESOURCES + "report/report.css", RESOURCES + "sweep/sweep.css")),
                Inlined.ofResources(List.of(RESOURCES + "sweep/sweep.js")));
    }

    private static List<String> unbroken(List<String> sentences) {
        return sentences.stream().map(SweepPage::unbroken).toList();
    }

    /** Keeps a number and its unit on one line. */
    private static String unbroken(String sentence) {
        return BEFORE_UNIT.matcher(sentence).replaceAll("\u00a0");
    }

    /** Content-Security-Policy of the page: nothing is fetched, and nothing runs but its own script. */
    public String policy() {
        return "default-src 'none'; script-src " + script.hash() + "; style-src " + style.hash()
                + "; base-uri 'none'; form-action 'none'";
    }
}

package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReportWriterTest {

    private static final long SEED = 20_260_701;

    @TempDir
    Path folder;

    private String page(String hostile) throws IOException {
        Path file = folder.resolve("report.html");
        ReportWriter.write(InventedField.content(SEED, 40, 24, hostile), file);
        return Files.readString(file);
    }

    static List<String> hostileNames() {
        return List.of(
                "</script><script>alert(1)</script>",
                "<!-- <script>",
                "\" onmouseover=\"alert(1)",
                "' autofocus onfocus='alert(1)",
                "\u202egnp.exe\u202c \u2067abc\u2069",
                "</style></title><img src=x onerror=alert(1)>",
                "${1+1} $unsafe{x} @if(true) &amp; &lt;",
                "]]> \\u003c \u2028\u2029\u0000\u0007",
                "x".repeat(10_000));
    }

    @ParameterizedTest
    @MethodSource("hostileNames")
    void textOfTheUserStaysText(String hostile) throws IOException {
        List<String> plain = elements(page(""));
        List<String> attacked = elements(page(hostile));
        assertEquals(plain, attacked, () -> "seed " + SEED + ": the name changed the elements of the page");
    }

    /** Errors of 0.3 and -0.1 m: mean 0.1 m, root mean square 0.2236 m over a range of 2 m. */
    @Test
    void measuredHeadsAreComparedInASentence() throws IOException {
        String text = page("").replaceAll("<[^>]*>", "");
        assertTrue(
                text.contains(
                        "Against 2 measured heads the computed ones are 0.10\u00a0m too high in the mean and miss them by"
                                + " 0.22\u00a0m (root mean square, 11\u00a0% of the range that was measured); the worst, 0.30\u00a0m,"
                                + " is at Town bore 1 on 5 August 2027."),
                "the sentence of the fit");
    }

    /** Five bores take 40, 30, 10, 5 and 5 % of 8 m; of 23 places three are named below the table. */
    @Test
    void attributionNamesTheLargestCausesAndWhatItLeavesOut() throws IOException {
        String html = page("");
        String section = html.substring(
                html.indexOf("<section id=\"attribution-part\""), html.indexOf("<section id=\"balance-part\""));
        String text = section.replaceAll("<[^>]*>", "").replaceAll("[\\s\u00a0]+", " ");
        assertTrue(
                text.contains(
                        "Town bore 1: 3.20 m (40.0 %), Town bore 2: 2.40 m (30.0 %), Town bore 3: 0.80 m (10.0 %),"
                                + " 2 others: 0.80 m (10.0 %)"),
                text);
        assertTrue(text.contains("Town bore 1: 0.40 L/s (40.0 %)"), "lost discharge");
        assertTrue(
                text.contains("Less affected, in attribution.csv alone: Place 20, Place 21 and Place 22."), "others");
        assertEquals(20 + 1, section.split("<th scope=\"row\"", -1).length - 1);
    }

    /** Every height of water in the answer stands beside its numerical error. */
    @Test
    void noFigureOfTheAnswerIsWithoutItsError() throws IOException {
        String html = page("");
        String answer = html.substring(html.indexOf("<section id=\"answer\""), html.indexOf("class=\"doubts\""));
        Matcher figure = Pattern.compile(
                        "(?s)data-quantity=\"HEIGHT\" data-error=\"(?:true|false)\">[^<]*</data>(.{0,120})")
                .matcher(answer);
        int count = 0;
        while (figure.find()) {
            String after = figure.group(1);
            boolean allowed = after.contains("is allowed");
            boolean isError = answer.substring(0, figure.start())
                    .stripTrailing()
                    .matches("(?s).*\u00b1\u00a0(under\u00a0)?<data value=\"[^\"]*\"");
            boolean keyFigure = after.contains("class=\"meaning\"");
            assertTrue(allowed || isError || keyFigure || after.startsWith(" \u00b1"), () -> figure.group());
            count++;
        }
        assertTrue(count >= 6, "found " + count);
    }

    @Test
    void nothingIsFetchedFromElsewhere() throws IOException {
        String html = page("");
        String markup = withoutScripts(html);
        assertFalse(Pattern.compile("(src|href|action|poster|data)\\s*=\\s*[\"']?(?!#)[^\\s>]*//")
                .matcher(markup)
                .find());
        assertFalse(markup.contains("<link"), "a link element");
        assertFalse(markup.contains("@import"), "an import in the styles");
        assertFalse(Pattern.compile("url\\((?!data:)").matcher(markup).find(), "a url in the styles");
        assertFalse(html.contains("sourceMappingURL"), "a source map");
        assertFalse(
                Pattern.compile("<[a-z][^>]*\\s(style|on[a-z]+)=")
                        .matcher(markup)
                        .find(),
                "inline style or handler");
    }

    @Test
    void thePolicyKnowsEveryScriptAndStyleByItsHash() throws Exception {
        String html = page("");
        Matcher policy = Pattern.compile("Content-Security-Policy\" content=\"([^\"]*)\"")
                .matcher(html);
        assertTrue(policy.find());
        String rules = policy.group(1).replace("&#39;", "'");
        assertTrue(rules.startsWith("default-src 'none'; "), rules);
        assertFalse(rules.contains("unsafe"), rules);
        Matcher inline = Pattern.compile("<(?:script|style)>(.*?)</(?:script|style)>", Pattern.DOTALL)
                .matcher(html);
        int count = 0;
        while (inline.find()) {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256").digest(inline.group(1).getBytes(StandardCharsets.UTF_8));
            String name = "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
            assertTrue(
                    rules.contains(name),
                    "no hash for the script or style that begins "
                            + inline.group(1).substring(0, 60));
            count++;
        }
        assertEquals(5, count);
    }

    @Test
    void elementsAreClosedInOrder() throws IOException {
        List<String> open = new ArrayList<>();
        for (String element : elements(page(""))) {
            String name = element.substring(element.startsWith("/") ? 1 : 0).replace("!", "");
            if (element.startsWith("/")) {
                assertEquals(name, open.remove(open.size() - 1));
            } else if (!List.of("meta", "input", "doctype", "br").contains(name)) {
                open.add(name);
            }
        }
        assertEquals(List.of(), open);
    }

    @Test
    void aFieldOf150000CellsFitsInSixMegabytes() throws IOException {
        Path file = folder.resolve("large.html");
        ReportWriter.write(InventedField.content(SEED, 500, 300), file);
        assertTrue(Files.size(file) < 6_000_000, () -> "found " + file.toFile().length() + " bytes");
    }

    @Test
    void nothingIsLeftUnderATemporaryName() throws IOException {
        page("");
        try (var files = Files.list(folder)) {
            assertEquals(
                    List.of("report.html"),
                    files.map(file -> file.getFileName().toString()).toList());
        }
    }

    private static String withoutScripts(String html) {
        return Pattern.compile("<script[^>]*>.*?</script>", Pattern.DOTALL)
                .matcher(html)
                .replaceAll("");
    }

    /** Names of the tags outside script, style and attribute values, in order. */
    private static List<String> elements(String html) {
        String markup = Pattern.compile("(<(script|style)[^>]*>).*?(</\\2>)", Pattern.DOTALL)
                .matcher(html)
                .replaceAll("$1$3");
        Matcher tag = Pattern.compile("<([/!]?[a-zA-Z][a-zA-Z0-9]*)(?:\\s+[a-zA-Z-]+(?:=\"[^\"]*\")?)*\\s*>|<")
                .matcher(markup);
        List<String> names = new ArrayList<>();
        while (tag.find()) {
            names.add(tag.group(1) == null ? "stray <" : tag.group(1).toLowerCase(java.util.Locale.ROOT));
        }
        return names;
    }
}

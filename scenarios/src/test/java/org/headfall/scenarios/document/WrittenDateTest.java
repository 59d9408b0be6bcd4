package org.headfall.scenarios.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WrittenDateTest {

    /** Calendar dates of ISO 8601 in their extended form, with years of four digits, as java.time reads them. */
    private static final DateTimeFormatter LIBRARY = new DateTimeFormatterBuilder()
            .appendValue(ChronoField.YEAR, 4)
            .appendLiteral('-')
            .appendValue(ChronoField.MONTH_OF_YEAR, 2)
            .appendLiteral('-')
            .appendValue(ChronoField.DAY_OF_MONTH, 2)
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    private static final String LETTERS = "0123456789-+/. x\u0663";

    /** Days that exist and not, and dates of which letters were exchanged, left out or put in. */
    @Test
    void readsWhatTheLibraryReads() {
        long seed = 17;
        Random random = new Random(seed);
        int dates = 0;
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder(String.format(
                    Locale.ROOT, "%04d-%02d-%02d", random.nextInt(10_000), random.nextInt(14), random.nextInt(33)));
            for (int change = random.nextInt(3); change > 0; change--) {
                int at = random.nextInt(text.length());
                char letter = LETTERS.charAt(random.nextInt(LETTERS.length()));
                switch (random.nextInt(3)) {
                    case 0 -> text.setCharAt(at, letter);
                    case 1 -> text.deleteCharAt(at);
                    default -> text.insert(at, letter);
                }
            }
            LocalDate expected = byLibrary(text.toString());
            assertEquals(expected, ValueReader.parseDate(text.toString()), () -> "seed " + seed + ": " + text);
            dates += expected == null ? 0 : 1;
        }
        assertTrue(dates > 5000 && dates < 15_000, dates + " dates");
    }

    private static LocalDate byLibrary(String text) {
        try {
            return LocalDate.parse(text, LIBRARY);
        } catch (DateTimeParseException noDate) {
            return null;
        }
    }
}

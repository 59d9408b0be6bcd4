package org.headfall.scenarios.raster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.Random;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;

class WrittenNumberTest {

    /** Digits often, so that many of the texts are numbers; letters that other readers of numbers take. */
    private static final String LETTERS = "00112345678999..--+eE,fx";

    private static final int LONGEST = 6;

    /** As decimal numbers of the library, which knows neither hexadecimal ones nor "1f". */
    @Test
    void readsWhatTheLibraryReads() throws IOException {
        long seed = 23;
        Random random = new Random(seed);
        int numbers = 0;
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = 1 + random.nextInt(LONGEST); length > 0; length--) {
                text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
            }
            OptionalDouble expected = byLibrary(text.toString());
            assertEquals(expected, read(text.toString()), () -> "seed " + seed + ": " + text);
            numbers += expected.isPresent() ? 1 : 0;
        }
        assertTrue(numbers > 2000 && numbers < 18_000, numbers + " numbers");
    }

    private static OptionalDouble read(String text) throws IOException {
        ByteArrayInputStream bytes = new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII));
        TokenReader tokens = new TokenReader(Path.of("map.asc"), bytes);
        tokens.advance();
        try {
            return OptionalDouble.of(AsciiGridDecoder.finiteValue(tokens, "a number"));
        } catch (SpatialFormatException refused) {
            return OptionalDouble.empty();
        }
    }

    private static OptionalDouble byLibrary(String text) {
        try {
            double value = new BigDecimal(text).doubleValue();
            // A decimal number has no zero below zero.
            double signed = value == 0 && text.startsWith("-") ? -0.0 : value;
            return Double.isFinite(value) ? OptionalDouble.of(signed) : OptionalDouble.empty();
        } catch (NumberFormatException noNumber) {
            return OptionalDouble.empty();
        }
    }
}

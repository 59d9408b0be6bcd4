package org.headfall.scenarios.badinput;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files of a sound scenario, damaged by chance, end in problems or in a plan, and in nothing else. The seed is fixed;
 * another one, or more rounds, come with {@code -Ddamage.seed=... -Ddamage.rounds=...}.
 */
class DamagedInputTest {
    private static final List<String> FILES = List.of(
            "scenario.yaml",
            "scenario.yaml",
            "scenario.yaml",
            "bores.csv",
            "changes.csv",
            "rates.csv",
            "top.asc",
            "outcrop.geojson");
    private static final Duration LONGEST = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    @Test
    void damagedFilesEndInProblemsOrAPlan() throws IOException {
        long seed = Long.getLong("damage.seed", 20261125);
        int rounds = Integer.getInteger("damage.rounds", 300);
        for (int round = 0; round < rounds; round++) {
            Random random = new Random(seed + round);
            BadInputCase.copyBase(folder);
            String name = FILES.get(random.nextInt(FILES.size()));
            Path file = folder.resolve(name);
            byte[] damaged = damage(Files.readAllBytes(file), random);
            Files.write(file, damaged);
            try {
                assertTimeoutPreemptively(LONGEST, () -> Messages.of(folder.resolve("scenario.yaml")));
            } catch (Throwable unexpected) {
                String text = new String(damaged, StandardCharsets.UTF_8);
                throw new AssertionError("-Ddamage.seed=" + (seed + round) + ", " + name + ":\n" + text, unexpected);
            }
        }
    }

    private static byte[] damage(byte[] sound, Random random) {
        byte[] damaged = sound;
        for (int times = 1 + random.nextInt(3); times > 0; times--) {
            damaged = switch (random.nextInt(6)) {
                case 0 -> changeLines(damaged, random);
                case 1 -> swapValues(damaged, random);
                case 2 -> changeBytes(damaged, random);
                case 3 -> cut(damaged, random);
                case 4 -> insert(damaged, random);
                default -> changeDigits(damaged, random);
            };
        }
        return damaged;
    }

    /** Drops, doubles or swaps lines. */
    private static byte[] changeLines(byte[] bytes, Random random) {
        List<String> lines = new ArrayList<>(List.of(text(bytes).split("\n", -1)));
        int line = random.nextInt(lines.size());
        switch (random.nextInt(3)) {
            case 0 -> lines.remove(line);
            case 1 -> lines.add(line, lines.get(random.nextInt(lines.size())));
            default -> Collections.swap(lines, line, random.nextInt(lines.size()));
        }
        return bytes(String.join("\n", lines));
    }

    /** Swaps two of the words and numbers. */
    private static byte[] swapValues(byte[] bytes, Random random) {
        String[] words = text(bytes).split("(?<=[ ,:\\[\\]{}\n])|(?=[ ,:\\[\\]{}\n])");
        int one = random.nextInt(words.length);
        int other = random.nextInt(words.length);
        String kept = words[one];
        words[one] = words[other];
        words[other] = kept;
        return bytes(String.join("", words));
    }

    private static byte[] changeBytes(byte[] bytes, Random random) {
        byte[] changed = bytes.clone();
        for (int times = random.nextInt(5); times >= 0 && changed.length > 0; times--) {
            changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
        }
        return changed;
    }

    private static byte[] cut(byte[] bytes, Random random) {
        return Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
    }

    /** Puts in what is known to be awkward. */
    private static byte[] insert(byte[] bytes, Random random) {
        String[] awkward = {
            "\u0000",
            "\ufeff",
            "\"",
            "'",
            "- ",
            ": ",
            "{",
            "}",
            "[",
            "]",
            "&a ",
            "*a",
            "!!map ",
            "|\n",
            "---\n",
            "#",
            "1e308",
            "1e-320",
            "NaN",
            "-",
            "0",
            "9999999999",
            "\t",
            "\r",
            "\ud83d\udca7",
            "%",
            "null",
            "~",
            "@",
            "`"
        };
        byte[] inserted = bytes(awkward[random.nextInt(awkward.length)]);
        int at = random.nextInt(bytes.length + 1);
        ByteArrayOutputStream joined = new ByteArrayOutputStream();
        joined.write(bytes, 0, at);
        joined.writeBytes(inserted);
        joined.write(bytes, at, bytes.length - at);
        return joined.toByteArray();
    }

    /** Numbers of other size and sign, in sound surroundings. */
    private static byte[] changeDigits(byte[] bytes, Random random) {
        byte[] changed = bytes.clone();
        String digits = "0123456789.-e";
        for (int i = 0; i < changed.length; i++) {
            if (Character.isDigit(changed[i]) && random.nextInt(20) == 0) {
                changed[i] = (byte) digits.charAt(random.nextInt(digits.length()));
            }
        }
        return changed;
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static byte[] bytes(String text) {
        boolean latin = text.chars().allMatch(letter -> letter < 256);
        return text.getBytes(latin ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    }
}

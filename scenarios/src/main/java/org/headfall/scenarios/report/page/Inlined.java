package org.headfall.scenarios.report.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A script or style sheet that is written into the page, known to the page's policy by its hash.
 *
 * @param text the text between the tags
 * @param hash SHA-256 of the text as a policy writes it: {@code 'sha256-...'}
 */
public record Inlined(String text, String hash) {

    private static final Pattern SOURCE_MAP = Pattern.compile("(?m)^//# sourceMappingURL=.*$");

    /** Joins resources of the class path, in order, into one text. */
    public static Inlined ofResources(List<String> paths) {
        String text = paths.stream().map(Inlined::read).collect(Collectors.joining("\n"));
        String plain = SOURCE_MAP.matcher(text).replaceAll("").replace("\r\n", "\n");
        return new Inlined(plain, hashOf(plain));
    }

    /** Text of a resource of the class path. */
    public static String read(String path) {
        try (InputStream stream = Inlined.class.getResourceAsStream(path)) {
            if (stream == null) {
                throw new IllegalStateException("the program is incomplete: resource " + path + " is missing");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("resource " + path + " cannot be read", e);
        }
    }

    /**
     * Content-Security-Policy of a page: nothing is fetched, and nothing runs but its own scripts; pictures are made by them.
     *
     * @param style its style sheet
     * @param scripts its scripts
     * @return the policy
     */
    public static String policy(Inlined style, List<Inlined> scripts) {
        String hashes = scripts.stream().map(Inlined::hash).collect(Collectors.joining(" "));
        return "default-src 'none'; script-src " + hashes + "; style-src " + style.hash()
                + "; img-src data: blob:; base-uri 'none'; form-action 'none'";
    }

    private static String hashOf(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
